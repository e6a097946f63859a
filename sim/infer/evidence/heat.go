package evidence

import (
	"fmt"
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// heatStep is a step of the kiln that is held at some air onto the malt, °C, as the record
// counts it.
type heatStep struct {
	kind      string
	number    int
	low, high float64
	rises     bool // from low to high
}

func (s heatStep) String() string {
	return fmt.Sprintf("%s %d", s.kind, s.number)
}

// off is how far a temperature lies outside of what the step is held at, K.
func (s heatStep) off(t float64) float64 { return math.Abs(t - min(max(t, s.low), s.high)) }

// heatSteps are the steps of the only kiln of the process, as they were changed; none where
// it has several, or some step is not held by the air onto the malt.
func (t *Trial) heatSteps() (list []heatStep) {
	kilns := model.Every[*model.Kilning](t.Process)
	if len(kilns) != 1 {
		return nil
	}
	count := map[string]int{}
	for _, s := range kilns[0].Steps {
		kind := string(s.Kind())
		count[kind]++
		if model.HeatedOf(s) == nil {
			continue
		}
		at, rises := s.Warmth().At, false
		if from := s.Warmth().From; from != nil {
			at, rises = from, true
		}
		for i := range t.Batch.Changes {
			c := &t.Batch.Changes[i]
			if c.Step.Kind.Text == kind && (c.Step.Number == 0 || c.Step.Number == count[kind]) && c.Is(quantity.Temperature) {
				at, rises = &c.To, false
			}
		}
		if at == nil || at.Where != "" && at.Where != vocabulary.PlaceAirOn {
			return nil
		}
		low, high := at.Low.SI-zeroC, at.High.SI-zeroC
		list = append(list, heatStep{kind, count[kind], min(low, high), max(low, high), rises})
	}
	return list
}

// Odds by which a step fits a reading better than another one must, as a difference of
// squares over twice the variance: e^2.5 is 12 to 1.
const surely = 2.5

// warmsUp is how long before a reading of its air a step of the kiln has begun, s: it takes
// that long to come to a heat (common practice).
const warmsUp = 1800.0

// takeHeat finds the step of the kiln in which a reading of the air onto the malt puts the
// batch, where no line says it. Those before it are over by then, and it is not. A kiln that
// is warmed passes every colder heat, so a step is only taken to be over where it was
// hotter if the kiln had come to its heat before.
func (t *Trial) takeHeat() {
	steps := t.heatSteps()
	if len(steps) < 2 {
		return
	}
	sd := math.Hypot(placeError[vocabulary.PlaceAirOn], OffsetSpread)
	hottest, reached := math.Inf(-1), 0
	for _, x := range t.Batch.Readings {
		th := model.Thermometer(x)
		if th == nil || th.Where != vocabulary.PlaceAirOn || !t.counts(x) || t.shows(x) != vocabulary.Drying {
			continue
		}
		read, at := th.Mid()-zeroC, t.since(x.When())
		if k, ok := fitting(steps, read, sd); ok && k >= reached {
			t.putInto(steps, k, hottest, at, x)
			reached = k
		}
		hottest = max(hottest, read)
	}
}

// fitting gives the step that fits a reading best, where it fits and no other does nearly as
// well.
func fitting(steps []heatStep, read, sd float64) (best int, ok bool) {
	for k := range steps {
		if steps[k].off(read) < steps[best].off(read) {
			best = k
		}
	}
	fit := steps[best].off(read)
	if fit > 2*sd {
		return best, false
	}
	for k := range steps {
		if d := steps[k].off(read); k != best && (d*d-fit*fit)/(2*sd*sd) < surely {
			return best, false
		}
	}
	return best, true
}

// putInto puts the batch into a step at a time.
func (t *Trial) putInto(steps []heatStep, k int, hottest, at float64, x model.Reading) {
	c, told := &t.course, true
	for _, s := range steps[:k] {
		if s.low > steps[k].high && hottest < s.low-2*placeError[vocabulary.PlaceAirOn] {
			return // it may still be on its way there
		}
		told = told && t.named(s)
	}
	s := steps[k]
	if k > 0 {
		c.Ends = append(c.Ends, forecast.Ended{Kind: s.kind, Number: s.number, At: t.warming(x), Begun: true})
	}
	if !s.rises && !t.named(s) {
		c.Still = append(c.Still, forecast.Ended{Kind: s.kind, Number: s.number, At: at})
	}
	if !told && !slices.ContainsFunc(t.byHeat, func(a forecast.Assumption) bool { return a.(forecast.StepByHeat).Step == s.String() }) {
		t.byHeat = append(t.byHeat, forecast.StepByHeat{Read: fmt.Sprintf("air-on %s", model.Thermometer(x).Range.Range), At: x.When().Time, Step: s.String()})
	}
}

// warming is when a kiln of which something is read had begun to come to that heat, s from
// the first soak: behind the line before it.
func (t *Trial) warming(x model.Reading) float64 {
	at := max(0, t.since(x.When())-warmsUp)
	for _, y := range t.Batch.Readings {
		if y == x {
			break
		}
		if !y.When().IsZero() {
			at = max(at, t.since(y.When()))
		}
	}
	return min(at, t.since(x.When()))
}

// named tells whether some line of the record says when a step ended.
func (t *Trial) named(s heatStep) bool {
	return slices.ContainsFunc(t.Batch.Readings, func(x model.Reading) bool {
		a := model.After(x)
		return a != nil && t.counts(x) && a.Kind.Text == s.kind && (a.Number == 0 || a.Number == s.number)
	})
}

// FitsNoStep tells whether a reading of the air onto the malt on the kiln is of a heat at
// which none of its steps is held.
func (t *Trial) FitsNoStep(x model.Reading) bool {
	th, steps := model.Thermometer(x), t.heatSteps()
	if th == nil || th.Where != vocabulary.PlaceAirOn || t.shows(x) != vocabulary.Drying || len(steps) == 0 {
		return false
	}
	sd := math.Hypot(placeError[vocabulary.PlaceAirOn], OffsetSpread)
	return !slices.ContainsFunc(steps, func(s heatStep) bool { return s.off(th.Mid()-zeroC) <= 3*sd })
}
