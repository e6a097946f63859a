package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
	"maltwright/sim/work"
)

// physics is the state of one stage that time moves forward.
type physics interface {
	advance(dt float64) error
	copy(spare physics) physics // in the memory of one of its kind that nobody needs any more; nil for none
	set(physics)                // takes over the state of another of its kind
	// measure gives what a condition can name: a quantity in SI, or a word.
	measure(name string) (si float64, word string, ok bool)
	unwatched() float64 // s for which it may go on without anybody looking whether a condition holds
	moisture() float64  // wet basis, 0 to 1
	weight() float64    // kg on the scale, drained
	see(*Sight)         // writes down what is to be seen of it
}

const (
	often       = 600.0        // s: how often a condition is looked at where much may change soon
	seldom      = 1800.0       // s: the same of grain, which goes its way for days
	onKiln      = 1200.0       // s: the same of malt on the kiln
	atFirst     = 60.0         // s: the same of it as a step begins
	momentWidth = 6.0          // s: to within which the moment of a condition is found
	searchLimit = 96 * 3600.0  // s: how far beyond its time an unmet gate is followed
	endless     = 90 * 86400.0 // s: no step lasts longer; a guard beyond it is taken as this
)

// stop is one way in which a step can end.
type stop struct {
	until    *model.Condition
	earliest float64 // s from the beginning of the step
	latest   float64
	ending   Ending   // when latest comes first
	open     bool     // its time may be over first: another step of the stage may wait on
	ready    *float64 // s at which the condition first held before the earliest time; nil where nobody asks
	first    *float64 // s from the beginning of the step at which the condition first held; nil where nobody asks
	guard    float64  // s: the earliest time of the step itself, where a record moves it
}

// tick is something done at even intervals, such as turning the piece.
type tick struct {
	every, next float64 // s; next counts from the beginning of the step
	do          func(physics) error
	place       source.Place // of the statement that asks for it
	leaves      bool         // it is not done at the very end of a stage: nobody turns what is unloaded

	// again gives how long it is to the next time, s, where that is not every; from is when it
	// was done instead, s from the first soak, nil for when it was due.
	again func(from *float64) float64

	// afresh gives the tick as it goes on beside this one, in what is only tried; nil for one
	// that has nothing to remember.
	afresh func() *tick
}

// goingOn are the ticks of a stage as they go on in what is only tried: none of it is
// written down, and these stay as they are. What is known to have been done is over.
func goingOn(ticks []*tick) []*tick {
	var list []*tick
	for _, t := range ticks {
		switch {
		case t.afresh != nil:
			own := t.afresh()
			own.every, own.next, own.place, own.leaves = t.every, t.next, t.place, t.leaves
			list = append(list, own)
		case t.every > 0:
			own := *t
			list = append(list, &own)
		}
	}
	return list
}

// to is how long it is to the next time, s.
func (t *tick) to(from *float64) float64 {
	if t.again != nil {
		return t.again(from)
	}
	return t.every
}

// drive advances the model until one of the stops ends it. It gives the stop that
// did, how, and after how long. On an error the model is left where it was last
// sound.
func (e *effort) drive(m *physics, stops []stop, ticks []*tick) (which int, ending Ending, took float64, err error) {
	var before physics
	note(*m, *m, stops, 0, 0)
	for at := 0.0; ; {
		if i := holding(*m, stops, at); i >= 0 {
			return i, ByGate, at, nil
		}
		i, end := soonest(stops)
		if at >= end {
			return i, stops[i].ending, at, nil
		}
		due, by := untilTick(ticks, at)
		dt := min((*m).unwatched(), end-at, untilEarliest(stops, at), due)
		if due > dt {
			by = source.Place{}
		}
		before = (*m).copy(before)
		if err := e.advance(*m, dt, by); err != nil {
			*m = before
			return i, stops[i].ending, at, err
		}
		if k := holding(*m, stops, at+dt); k >= 0 {
			span, err := e.moment(m, before, &stops[k], at, dt)
			return k, ByGate, at + span, err
		}
		note(*m, before, stops, at, dt)
		at += dt
		if err := e.strike(*m, ticks, at, i == 0 && at >= end-momentWidth); err != nil {
			return i, stops[i].ending, at, err
		}
	}
}

// untilTick tells when the next tick falls due, and which statement asks for it.
func untilTick(ticks []*tick, at float64) (next float64, place source.Place) {
	next = math.Inf(1)
	for _, t := range ticks {
		if due := max(t.next-at, momentWidth); due < next {
			next, place = due, t.place
		}
	}
	return next, place
}

// strike does what is due; at the end that the first stop brings, which is that of a stage
// where it has several, without what is left then.
func (e *effort) strike(m physics, ticks []*tick, at float64, end bool) error {
	for _, t := range ticks {
		for at >= t.next && !(end && t.leaves) {
			t.next += t.to(nil)
			if err := e.spend(work.Look, t.place); err != nil {
				return err
			}
			if err := t.do(m); err != nil {
				return err
			}
		}
	}
	return nil
}

// timed is what a condition can name at a time since the step began.
func timed(m physics, at float64) func(string) (float64, string, bool) {
	return func(name string) (float64, string, bool) {
		if name == vocabulary.MeasureTime {
			return at, "", true
		}
		return m.measure(name)
	}
}

// holding gives the first stop whose condition holds at the time.
func holding(m physics, stops []stop, at float64) int {
	for i := range stops {
		if stops[i].until != nil && at >= stops[i].earliest && holds(timed(m, at), stops[i].until) {
			return i
		}
	}
	return -1
}

// note writes down when a condition first holds that is waited on beyond it, and by
// which the step might have ended: within the last dt seconds, before which the model was
// as before.
func note(m, before physics, stops []stop, at, dt float64) {
	for i := range stops {
		s, now := &stops[i], at+dt
		if s.first != nil && math.IsNaN(*s.first) && now < s.earliest && holds(timed(m, now), s.until) {
			*s.first = since(m, before, s.until, at, dt)
		}
		if s.ready != nil && math.IsNaN(*s.ready) && s.guard <= now && now < s.earliest && holds(timed(m, now), s.until) {
			*s.ready = max(s.guard, since(m, before, s.until, at, dt))
		}
	}
}

// since is when a condition that holds of a model began to, by a straight line from how it
// was dt seconds before; where there is none, now.
func since(m, before physics, c *model.Condition, at, dt float64) float64 {
	if holds(timed(before, at), c) {
		return at
	}
	share, ok := crossing(timed(before, at), timed(m, at+dt), c)
	if !ok {
		share = 1
	}
	return at + share*dt
}

func soonest(stops []stop) (which int, end float64) {
	end = math.Inf(1)
	for i := range stops {
		if stops[i].latest < end {
			which, end = i, stops[i].latest
		}
	}
	return which, min(end, endless)
}

// untilEarliest keeps a chunk from running past an earliest time.
func untilEarliest(stops []stop, at float64) float64 {
	next := math.Inf(1)
	for i := range stops {
		if e := stops[i].earliest; e > at {
			next = min(next, e-at)
		}
	}
	return next
}

// holds tells whether all tests of a condition hold for what measure gives.
func holds(measure func(string) (float64, string, bool), c *model.Condition) bool {
	return failing(measure, c) == nil
}

// failing gives the first test that does not hold, or nil.
func failing(measure func(string) (float64, string, bool), c *model.Condition) *model.Test {
	for i := range c.Tests {
		t := &c.Tests[i]
		if si, word, ok := measure(t.Measure); !ok || !testHolds(t, si, word) {
			return t
		}
	}
	return nil
}

func testHolds(t *model.Test, si float64, word string) bool {
	switch {
	case math.IsNaN(si): // it is not forecast: whoever is there sees it
		return true
	case t.Word != "":
		return RubHolds(t.Word, word)
	case t.Bound == nil:
		return si > 0 // a bare measure, such as break, is 0 or 1
	}
	return t.Bound.Holds(si)
}
