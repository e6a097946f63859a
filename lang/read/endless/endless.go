// Package endless tells which houses ask for more than a test may wait for. Only tests
// use it: what a person may ask for is bounded by the program itself.
package endless

import (
	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

const (
	mostTime      = 365 * 86400 // s of work
	mostEvents    = 5000        // turns, stirrings, sprinklings and steps
	mostProcesses = 4
)

// Is tells whether the processes of a house, and those of its batches, take more than
// a year or more than some thousands of events.
func Is(h *model.House) bool {
	if len(h.Processes) > mostProcesses {
		return true
	}
	for _, p := range h.Processes {
		time, events := 0.0, 0.0
		for _, st := range p.Stages {
			s, n := steps(st.Steps)
			if st.For != nil {
				s += st.For.SI
			}
			s += latest(st.Allow)
			time, events = time+s, events+n+s/often(st)
		}
		if time > mostTime || events > mostEvents {
			return true
		}
	}
	return false
}

// often is the shortest time, s, between two things to do in a stage.
func often(st *model.Stage) float64 {
	least := float64(mostTime)
	for _, q := range []*model.Quantity{st.Turn, every(st.Sprinkle)} {
		if q != nil {
			least = min(least, q.SI)
		}
	}
	return max(least, 1)
}

func every(s *model.Sprinkle) *model.Quantity {
	if s == nil {
		return nil
	}
	return &model.Quantity{Quantity: s.Every.Quantity}
}

// steps gives how long steps take at the most, s, and how many they are.
func steps(list []*model.Step) (time, events float64) {
	for _, s := range list {
		times := 1.0
		if s.Times != nil {
			times = s.Times.Range.High.SI
		}
		t, n := steps(s.Steps)
		for _, q := range []*model.Quantity{s.For, s.Over} {
			if q != nil {
				t += q.SI
			}
		}
		time, events = time+times*(t+latest(s.Allow)+60), events+times*(n+1)
	}
	return time, events
}

func latest(g *model.Guard) float64 {
	if g == nil {
		return 0
	}
	var q *quantity.Quantity = g.Latest
	if q == nil {
		return 0
	}
	return q.SI
}
