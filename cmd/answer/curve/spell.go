package curve

import (
	"math"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

// Step is when a step runs, and what it has something held at.
type Step struct {
	outlook.StageName
	Label string // soak 1, but plain cure
	Span
	Set *Set // nil where nothing is held
}

// Set is the band of temperatures that a step has something held in: at times that rise, from the
// beginning of the step to its end, with straight lines between. A temperature is a band of no width.
type Set struct {
	Place     string // where it is taken, as a record names it
	At        []answer.Seconds
	Low, High []answer.Celsius
}

// spell lists the stages and the steps that run until the end of the curve.
func (c *Curve) spell(f *forecast.Forecast) {
	for _, st := range f.Stages {
		from, to := ends(st)
		if to <= from || from >= float64(c.To) {
			continue
		}
		name := outlook.NameOf(f.Process, st.Of)
		c.Stages = append(c.Stages, Stage{name, c.span(from, to), forecast.InStillOven(st.Of)})
		if steep, ok := st.Of.(*model.Steep); ok && steep.Target != nil {
			c.Aims = append(c.Aims, Aim{c.span(from, to), answer.Share(steep.Target.Low.SI), answer.Share(steep.Target.High.SI)})
		}
		for _, s := range st.Steps {
			if s.End > s.Start && s.Start < float64(c.To) {
				c.Steps = append(c.Steps, Step{name, s.Label, c.span(s.Start, s.End), c.waits(name, s, setOf(st.Of, s))})
			}
		}
	}
}

// waits is what a step has held: one that waits goes on as the one before it.
func (c *Curve) waits(of outlook.StageName, s forecast.Step, set *Set) *Set {
	if n := len(c.Steps); s.Kind == model.GateStep && n > 0 && c.Steps[n-1].StageName == of && c.Steps[n-1].Set == nil {
		return nil
	}
	return set
}

func (c *Curve) span(from, to float64) Span {
	return Span{answer.Seconds(from), min(answer.Seconds(to), c.To)}
}

// setOf is what a step has held. Malt that cools comes to its temperature as it can, and what lies in the
// exhaust of another floor takes that as it comes.
func setOf(of model.Stage, s forecast.Step) *Set {
	t := s.Temperature
	if !t.Known || s.Kind == model.CoolStep || math.IsNaN(t.From+t.To) || asItComes(of, s) {
		return nil
	}
	low, high := answer.Celsius(t.From), answer.Celsius(t.To)
	set := &Set{Place: t.Place, At: []answer.Seconds{answer.Seconds(s.Start)}, Low: []answer.Celsius{min(low, high)}, High: []answer.Celsius{max(low, high)}}
	if over, rises := riseOf(of, s); rises {
		set.Low[0], set.High[0] = low, low
		set.add(min(s.Start+over, s.End), low+answer.Celsius(share(s, over))*(high-low))
		if s.Start+over < s.End {
			set.add(s.End, high)
		}
		return set
	}
	set.At, set.Low, set.High = append(set.At, answer.Seconds(s.End)), append(set.Low, set.Low[0]), append(set.High, set.High[0])
	return set
}

// asItComes tells whether a step of a kiln asks for no temperature.
func asItComes(of model.Stage, s forecast.Step) bool {
	step := stepAt(model.StepsOf(of), s)
	if of.Kind() != model.KilnStage || step == nil || step.Kind() == model.GateStep {
		return false
	}
	w := step.Warmth()
	return w.At == nil && w.From == nil
}

func (s *Set) add(at float64, t answer.Celsius) {
	s.At, s.Low, s.High = append(s.At, answer.Seconds(at)), append(s.Low, t), append(s.High, t)
}

// share is how much of a rise over so long, s, a step comes to.
func share(s forecast.Step, over float64) float64 {
	if over <= 0 {
		return 1
	}
	return min(1, (s.End-s.Start)/over)
}

// riseOf is how long the temperature of a step takes from one end to the other; it is false of one that is
// held, as a record may say of a step that was to rise.
func riseOf(of model.Stage, s forecast.Step) (over float64, rises bool) {
	step := stepAt(model.StepsOf(of), s)
	if step == nil {
		return 0, false
	}
	w := step.Warmth()
	if w.From == nil || s.Temperature.From != celsius(w.From.Low.SI) || s.Temperature.To != celsius(w.From.High.SI) {
		return 0, false
	}
	if w.Over != nil {
		over = w.Over.SI
	}
	return over, true
}

func celsius(kelvin float64) float64 { return kelvin - quantity.ZeroCelsius }

// stepAt is the step of the process that one of a forecast is, nil where it has none of its own.
func stepAt(steps []model.Step, s forecast.Step) model.Step {
	for _, x := range steps {
		if x.Place() == s.Place {
			return x
		}
		if inner := stepAt(model.Inner(x), s); inner != nil {
			return inner
		}
	}
	return nil
}
