package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/work"
)

// gateWait is how long a gate without an allow is waited for (common practice: a
// shift), s.
const gateWait = 12 * 3600.0

// stopOf makes the stop of a step or a stage from what it says about its end.
func stopOf(until *model.Condition, time *model.Quantity, allow *model.Guard) stop {
	s := stop{until: until, latest: math.Inf(1), ending: ByTime}
	if allow != nil {
		if allow.Earliest != nil {
			s.earliest = allow.Earliest.SI
		}
		if allow.Latest != nil {
			s.latest, s.ending = allow.Latest.SI, ByGuard
		}
	}
	if time != nil && time.SI < s.latest {
		s.latest, s.ending = time.SI, ByTime
	}
	return s
}

// step drives one step to its end and writes it down, with its condition among
// the gates.
func (r *run) step(m physics, st model.Stage, s asked, out Step, ticks []*tick) error {
	return r.through(m, st, s.Until, stopAt(s), out, ticks)
}

// looking gives the stop, which then notes when its condition first holds.
func (s stop) looking() stop {
	if s.until != nil {
		first := math.NaN()
		s.first = &first
	}
	return s
}

// stopAt makes the stop of a step. A rise that waits for something under a guard is held at its end until that
// comes, or the latest time. A soak of 8 h may be meant to be repeated until it
// is enough, and a rise over 4 h to be waited on at the gate behind it: that their
// time is over first is no miss, as it is for a whole stage.
func stopAt(s asked) stop {
	time := s.For
	if time == nil && !s.heldOn() {
		time = s.Over
	}
	end := stopOf(s.Until, time, s.Allow)
	end.open = true
	return end
}

// through drives the model to the stop and writes the step and its gate down.
func (r *run) through(m physics, st model.Stage, until *model.Condition, s stop, out Step, ticks []*tick) error {
	r.at = out.Place
	before, began := m.moisture(), r.clock
	now := m
	s = r.known(s.looking(), r.now)
	_, ending, took, err := r.drive(&now, []stop{s}, ticks)
	m.set(now)
	for _, t := range ticks { // the next step counts from its own beginning
		t.next -= took
	}
	out.EndedBy = ending
	r.record(out, m, before, took)
	if err != nil {
		return err
	}
	r.outcome(st, m, until, s, ending, began, ticks)
	return nil
}

// outcome writes down how a condition went, if there was one.
func (r *run) outcome(st model.Stage, m physics, c *model.Condition, s stop, ending Ending, began float64, ticks []*tick) {
	switch {
	case c == nil:
	case ending == ByRecord:
		if holds(timed(m, r.clock-began), c) {
			r.met(st, m, c, began, false)
		} else {
			r.leave(st, m, c, began, false)
		}
	case ending == ByGate:
		r.met(st, m, c, began, false)
		if g := &r.f.Gates[len(r.f.Gates)-1]; s.first != nil && *s.first < g.Waited {
			g.First = *s.first
		}
	case ending == ByGuard || !s.open:
		r.unmet(st, m, c, began, false, ticks)
	}
}

// met writes down that a condition came about now.
func (r *run) met(st model.Stage, m physics, c *model.Condition, began float64, hold bool) {
	_ = r.effort.spend(work.Line, c.Place)
	r.f.Gates = append(r.f.Gates, Gate{Stage: st.Kind(), Of: st, Text: c.Place.Text(), Place: c.Place, Hold: hold,
		Met: true, Reached: r.clock, Ready: r.ready, Ended: r.clock, First: r.clock - began, Waited: r.clock - began, Moisture: m.moisture(), Needs: math.NaN(), Unjudged: unjudged(m, c)})
}

// unmet writes down that a condition did not come about, by how much, and how
// much longer it would have taken with everything left as it is, and turned, stirred and
// sprinkled as before.
func (r *run) unmet(st model.Stage, m physics, c *model.Condition, began float64, hold bool, ticks []*tick) {
	g := Gate{Stage: st.Kind(), Of: st, Text: c.Place.Text(), Place: c.Place, Hold: hold,
		Reached: math.NaN(), Ready: math.NaN(), First: math.NaN(), Ended: r.clock, Waited: r.clock - began, Moisture: m.moisture(), Needs: math.NaN()}
	_ = r.effort.spend(work.Line, c.Place)
	if t := failing(timed(m, r.clock-began), c); t != nil {
		g.Failed = t
		g.Measured, g.Word, _ = timed(m, r.clock-began)(t.Measure)
	}
	r.missed = true
	if _, steeping := m.(*steepModel); !steeping && !r.tried {
		g.Searching = true
		far := m.copy(nil)
		which := []stop{{until: c, latest: searchLimit, ending: ByGuard}}
		r.effort.at = c.Place
		if _, ending, took, err := r.effort.drive(&far, which, goingOn(ticks)); err == nil && ending == ByGate {
			g.Needs = took
		}
	}
	r.f.Gates = append(r.f.Gates, g)
}

// gate waits at a hold point, with everything as in the step before, its turns and stirrings too, and
// a piece that no hold has had yet as in the first of them, until its condition holds or its time is over.
func (r *run) gate(m physics, st model.Stage, s *model.Gate, ticks []*tick) error {
	if s.Asks == nil {
		return nil
	}
	if holds(timed(m, 0), s.Asks) {
		r.ready = math.NaN()
		r.met(st, m, s.Asks, r.clock, true)
		return nil
	}
	wait := stopOf(s.Asks, nil, s.Allow)
	if math.IsInf(wait.latest, 1) {
		wait.latest, wait.ending = gateWait, ByGuard
		r.assume(GateWait{gateWait})
	}
	r.at = s.Place()
	r.start(string(model.GateStep))
	before, began := m.moisture(), r.clock
	now := m
	_, ending, took, err := r.drive(&now, []stop{r.known(wait, r.now)}, ticks)
	m.set(now)
	for _, t := range ticks {
		t.next -= took
	}
	if ending != ByRecord || took > 0 {
		r.record(Step{Kind: model.GateStep, Label: Waiting, Place: s.Place(), EndedBy: ending, Temperature: r.waitsAt(m, st.Kind())}, m, before, took)
	}
	switch ending {
	case ByGate:
		r.met(st, m, s.Asks, began, true)
	case ByGuard:
		r.unmet(st, m, s.Asks, began, true, ticks)
	case ByRecord:
		r.leave(st, m, s.Asks, began, true)
	}
	return err
}

// waitsAt is the temperature in which a gate is waited at.
func (r *run) waitsAt(m physics, kind model.StageKind) Temperature {
	if piece, ok := m.(growing); ok && kind == model.GerminateStage {
		return piece.keeps() // that of the first hold, before any
	}
	return r.lastTemperature(kind)
}

// lastTemperature is where the step before left the temperature: a rise of the kiln at
// its end, a piece in its band.
func (r *run) lastTemperature(kind model.StageKind) Temperature {
	for i := len(r.f.Stages) - 1; i >= 0; i-- {
		if n := len(r.f.Stages[i].Steps); n > 0 {
			t := r.f.Stages[i].Steps[n-1].Temperature
			if kind == model.KilnStage {
				t.From = t.To
			}
			return t
		}
	}
	return Temperature{}
}

// bandOf gives a temperature band in °C.
func bandOf(r quantity.Range) (low, high float64) { return r.Low.SI - zeroC, r.High.SI - zeroC }
