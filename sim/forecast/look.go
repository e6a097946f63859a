package forecast

import (
	"math"
	"slices"
)

// drive drives the model, and writes its state down at each look that falls due.
func (r *run) drive(m *physics, stops []stop, ticks []*tick) (int, Ending, float64, error) {
	r.effort.at = r.at
	r.ready = math.NaN()
	if err := r.seeThrough(*m, r.clock); err != nil { // the first look of all, before anything is done
		return 0, BrokenOff, 0, err
	}
	r.seeStart(*m)
	if w := r.watching(); w != nil {
		ticks = append(slices.Clip(ticks), w)
	}
	began := r.clock
	which, ending, took, err := r.effort.drive(m, stops, ticks)
	r.ready += began
	if err == nil { // what is looked at as a step ends, is seen of it and not of the next
		err = r.seeThrough(*m, began+took+momentWidth)
	}
	if err != nil {
		ending = BrokenOff
	}
	return which, ending, took, err
}

// watching makes the tick of the looks, or nil where none is left.
func (r *run) watching() *tick {
	c := r.o.Course
	if c == nil || r.looked == len(c.Looks) {
		return nil
	}
	w := &tick{next: c.Looks[r.looked] - r.clock}
	began := r.clock
	w.do = func(m physics) error {
		r.see(m)
		w.next = math.Inf(1)
		if r.looked < len(c.Looks) {
			w.next = c.Looks[r.looked] - began
		} else if c.Brief {
			return errEnough
		}
		return nil
	}
	return w
}

// see writes the state down at the look that is due.
func (r *run) see(m physics) {
	r.seeAt(m, r.o.Course.Looks[r.looked])
	r.looked++
}

// seeEnd writes the state down as a step ends, where that is asked for.
func (r *run) seeEnd(m physics) {
	if c := r.o.Course; c != nil && c.AtEnds {
		r.seeAt(m, r.clock)
	}
}

// seeStart writes the state down as a stage begins, or a soak or rest of one, where that is asked for.
func (r *run) seeStart(m physics) {
	c := r.o.Course
	if c == nil || !c.AtStarts {
		return
	}
	if _, wet := m.(*steepModel); wet || len(r.f.Stages[len(r.f.Stages)-1].Steps) == 0 {
		r.seeAt(m, r.clock)
	}
}

func (r *run) seeAt(m physics, at float64) {
	s := unseen()
	s.At, s.Moisture, s.Weight = at, m.moisture(), m.weight()
	s.Step, s.Number, s.Lost = r.now.kind, r.now.number, math.NaN()
	s.CO2, s.Heat = r.batch.CO2(), r.f.Totals.KilnEnergy
	if n := len(r.f.Stages); n > 0 {
		s.Stage, s.Of = r.f.Stages[n-1].Kind, r.f.Stages[n-1].Of
	}
	m.see(&s)
	if bed, ok := m.(layered); ok && r.o.Course.Layers {
		s.Layers = bed.seeLayers()
	}
	s.Lost = 1 - s.Dry/r.batch.Lot.DryMass
	r.f.Seen = append(r.f.Seen, s)
}

// seeThrough writes down what is to be seen while nothing but handling happens.
func (r *run) seeThrough(m physics, until float64) error {
	c := r.o.Course
	if c == nil {
		return nil
	}
	for r.looked < len(c.Looks) && c.Looks[r.looked] <= until {
		r.see(m)
	}
	if c.Brief && r.looked == len(c.Looks) {
		return errEnough
	}
	return nil
}
