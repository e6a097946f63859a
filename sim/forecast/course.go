package forecast

import (
	"errors"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
)

// Course is what is known of a batch under way. A forecast that is given one keeps
// to it as far as it goes, and from there on to the process.
type Course struct {
	Ends     []Ended        // steps known to be over, in the order of the clock
	Still    []Ended        // steps known not to be over by a time, in the order of the clock; what is Exact of them counts for nothing
	Turns    []float64      // s from the first soak: when the piece was turned
	Changes  []model.Change // steps done otherwise than the process says
	Open     float64        // s from the first soak: a condition of which no end is known is waited for at least until then
	Looks    []float64      // s from the first soak, rising: when the state is written down
	Brief    bool           // the forecast breaks off behind the last look
	AtEnds   bool           // the state is written down at the end of each step too
	AtStarts bool           // and as each stage begins, and each soak and rest
	Layers   bool           // with the layers of a bed that air is blown through
}

// Ended says that a step, or a stage named by its kind, is over.
type Ended struct {
	Kind   string  // soak, rest, germinate, dry ...
	Number int     // which of its kind, from 1; 0 where there is one
	At     float64 // s from the first soak
	Exact  bool    // it ended then; otherwise it had ended by then
	Begun  bool    // it had only begun by then, so that what comes before it was over
}

// errEnough ends a brief forecast.
var errEnough = errors.New("all that was to be seen is seen")

// doing is the step that is being run, as a record names it.
type doing struct {
	kind   string
	number int
}

func (d doing) is(kind string, number int) bool {
	return d.kind == kind && (number == 0 || number == d.number)
}

// start notes which step begins.
func (r *run) start(kind string) {
	if r.counts == nil {
		r.counts = map[string]int{}
	}
	r.counts[kind]++
	r.now = doing{kind, r.counts[kind]}
}

// known fits the stop of a step to what is known of its end. A step of which an end
// is written ended then; none lasts longer than until the next end that is written;
// and where none is, a condition is still waited for.
func (r *run) known(s stop, d doing) stop {
	c := r.o.Course
	if c == nil {
		return s
	}
	for _, e := range r.ends {
		if d.is(e.Kind, e.Number) && e.Exact {
			return stop{latest: max(0, e.At-r.clock), ending: ByRecord, open: true}
		}
	}
	if wait := r.still(d); wait > 0 {
		s.earliest, s.latest = max(s.earliest, wait), max(s.latest, wait)
	}
	for _, e := range r.ends {
		if e.Begun && d.is(e.Kind, e.Number) {
			continue
		}
		if d.kind == string(model.GerminateStage) && e.Kind == string(model.HoldStep) && (r.wholes < 2 || e.Number <= r.lastHold) {
			continue // a hold that ends is not the end of the stage
		}
		if left := max(0, e.At-r.clock); left <= s.latest {
			s.latest, s.ending, s.open = left, ByRecord, true
			s.earliest = min(s.earliest, left)
		}
		return s
	}
	if wait := c.Open - r.clock; s.until != nil && wait > 0 {
		if s.ending == ByGuard {
			s.latest = max(s.latest, wait)
		}
		s.guard, s.earliest = s.earliest, max(s.earliest, min(wait, s.latest))
		s.ready = &r.ready
	}
	return s
}

// still is how much longer a step is known to last at the least, s.
func (r *run) still(d doing) (wait float64) {
	for _, e := range r.o.Course.Still {
		if d.is(e.Kind, e.Number) {
			wait = max(wait, e.At-r.clock)
		}
	}
	return wait
}

// over tells whether the stage that is run is known to be over by now.
func (r *run) over() bool {
	return len(r.ends) > 0 && r.whole.is(r.ends[0].Kind, r.ends[0].Number) && r.clock >= r.ends[0].At
}

// toCome tells whether more steps of the stage that is run are known to have been: what
// ended behind another stage is of a later one.
func (r *run) toCome(kinds ...model.StepKind) bool {
	for _, e := range r.ends {
		switch {
		case slices.Contains(kinds, model.StepKind(e.Kind)):
			if e.Number > r.counts[e.Kind] {
				return true
			}
		case r.wholes > 1:
			return false
		}
	}
	return false
}

// passed strikes the ends that are behind.
func (r *run) passed(d doing) {
	for i, e := range r.ends {
		if d.is(e.Kind, e.Number) && r.clock >= e.At-1 {
			r.ends = r.ends[i+1:]
			return
		}
	}
}

// left strikes the ends of the stage that is behind, and those of steps that it never
// came to. Where another of its kind follows, later steps are taken to be of that.
func (r *run) left() {
	last := r.whole.number == r.wholes
	r.ends = slices.DeleteFunc(slices.Clone(r.ends), func(e Ended) bool {
		if e.Kind == r.whole.kind {
			return last || e.Number <= r.whole.number
		}
		return string(stageOf[model.StepKind(e.Kind)]) == r.whole.kind && (last || e.Number <= r.counts[e.Kind])
	})
}

var stageOf = map[model.StepKind]model.StageKind{
	model.SoakStep: model.SteepStage, model.RestStep: model.SteepStage, model.HoldStep: model.GerminateStage, model.DryStep: model.KilnStage,
	model.StewStep: model.KilnStage, model.CureStep: model.KilnStage, model.RoastStep: model.KilnStage, model.CoolStep: model.KilnStage,
}

// asked is what a step asks: of its end and of its temperature.
type asked struct {
	model.Ending
	model.Warming
	place source.Place // of the step
}

// heldOn tells whether a change of temperature is held at its end, until something holds or the latest time is over.
func (s asked) heldOn() bool { return model.HeldOn(s.Ending, s.Warming) }

func askedOf(s model.Step) asked { return asked{s.Ends(), s.Warmth(), s.Place()} }

// asDone gives what the step asks, or what was done instead where the record says so.
func (r *run) asDone(s model.Step, d doing) asked { return r.changed(askedOf(s), d) }

func (r *run) changed(s asked, d doing) asked {
	if c := r.change(d, quantity.Temperature); c != nil {
		if s.For == nil && !s.heldOn() {
			s.For = s.Over
		}
		s.Warming = model.Warming{At: &c.To}
	}
	if c := r.change(d, quantity.Time); c != nil {
		s.Ending = model.Ending{For: &model.Quantity{Quantity: c.To.Low, Place: c.To.Place}}
	}
	return s
}

// otherwise is the step of the kiln with its air, its smoke and its water as they were where
// the record says so.
func (r *run) otherwise(s model.Step) model.Step {
	if r.o.Course == nil {
		return s
	}
	for _, c := range r.o.Course.Changes {
		if r.now.is(c.Step.Kind.Text, c.Step.Number) {
			s = model.Otherwise(s, c)
		}
	}
	return s
}

// warmedAs gives the hold as it was done where the record says of its whole stage that
// it was kept otherwise.
func (r *run) warmedAs(s asked, stage doing) asked {
	if r.change(stage, quantity.Temperature) == nil {
		return s
	}
	return r.changed(s, stage)
}

// change is what was done instead, of a dimension, nil where the record says nothing.
func (r *run) change(d doing, of quantity.Dimension) *model.Change {
	if r.o.Course == nil {
		return nil
	}
	for i, c := range r.o.Course.Changes {
		if c.Is(of) && d.is(c.Step.Kind.Text, c.Step.Number) {
			return &r.o.Course.Changes[i]
		}
	}
	return nil
}

// stageStop is the stop of a stage that is a step of its own, as it was done.
func (r *run) stageStop(st model.Stage, d doing) stop {
	if c := r.change(d, quantity.Time); c != nil {
		return stop{latest: c.To.Low.SI, ending: ByTime}
	}
	return stopOf(st.Ends().Until, st.Ends().For, st.Ends().Allow)
}
