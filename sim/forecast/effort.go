package forecast

import (
	"context"
	"errors"
	"math"

	"maltwright/lang/source"
	"maltwright/sim/work"
)

// effort is what a forecast spends, by the statement that asks for it.
type effort struct {
	*work.Meter
	at source.Place // of the statement that is driven
	by map[source.Place]int

	last     source.Place // the statement that was counted for last, mostly many times over
	unbooked int          // for it, and not yet in the map
}

func effortOf(m *work.Meter) *effort {
	if m == nil {
		m = work.NewMeter(context.Background(), nil)
	}
	return &effort{Meter: m, by: map[source.Place]int{}}
}

// spend spends on behalf of a statement; one without a place is that which is driven.
func (e *effort) spend(n int, by source.Place) error {
	err := e.Spend(n)
	e.count(n, by)
	return err
}

func (e *effort) count(n int, by source.Place) {
	if !by.Known() {
		by = e.at
	}
	if by != e.last {
		e.by[e.last] += e.unbooked
		e.last, e.unbooked = by, 0
	}
	e.unbooked += n
}

// advance moves the model on, and counts what that costs.
func (e *effort) advance(m physics, dt float64, by source.Place) error {
	before := e.Spent()
	err := e.Spend(work.Look)
	if err == nil {
		err = m.advance(dt)
	}
	e.count(e.Spent()-before, by)
	if err == nil {
		err = e.Err()
	}
	return err
}

// stopped tells whether it was not this forecast that was too much, but that nobody
// waits for it any more, or that it came after others.
func (e *effort) stopped() bool { return e.Err() != nil && !errors.Is(e.Err(), work.ErrTooMuch) }

// dearest gives the statement on which most was spent, and how much of all; where none is
// known it is that which is given.
func (e *effort) dearest(otherwise source.Place) (source.Place, error) {
	at, most := otherwise, 0
	e.by[e.last] += e.unbooked
	e.unbooked = 0
	for p, n := range e.by {
		if p.Known() && (n > most || n == most && p.Start < at.Start) {
			at, most = p, n
		}
	}
	if most == 0 {
		return at, TooDear{work.Most, math.NaN()}
	}
	return at, TooDear{work.Most, float64(most) / float64(e.Spent())}
}
