// Package endless tells which houses ask for more than a test may wait for. Only tests
// use it: what a person may ask for is bounded by the program itself.
package endless

import (
	"maltwright/lang/model"
)

const (
	mostTime      = 365 * 86400 // s of work
	mostEvents    = 5000        // turns, stirrings, sprinklings, times of air and steps
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
			s, n := steps(model.StepsOf(st))
			if st.Ends().For != nil {
				s += st.Ends().For.SI
			}
			s += latest(st.Ends().Allow)
			time, events = time+s, events+n+s/often(st)
		}
		if time > mostTime || events > mostEvents {
			return true
		}
	}
	return false
}

// often is the shortest time, s, between two things to do in a stage.
func often(st model.Stage) float64 {
	least := float64(mostTime)
	sooner := func(q *model.Quantity) {
		if q != nil {
			least = min(least, q.SI)
		}
	}
	switch st := st.(type) {
	case *model.Germination:
		sooner(st.Turn)
		if st.Sprinkle != nil {
			sooner(st.Sprinkle.Every)
		}
		for _, a := range st.Blown {
			sooner(a.Every)
		}
	case *model.Steep:
		if st.Aerate != nil {
			sooner(&st.Aerate.Every)
		}
	case *model.Withering:
		sooner(st.Turn)
		for _, a := range st.Blown {
			sooner(a.Every)
		}
	case *model.Kilning:
		sooner(st.Stir)
	}
	return max(least, 1)
}

// steps gives how long steps take at the most, s, and how many they are.
func steps(list []model.Step) (time, events float64) {
	for _, s := range list {
		times := 1.0
		if r, ok := s.(*model.Repeat); ok && r.Times != nil {
			times = r.Times.Range.High.SI
		}
		t, n := steps(model.Inner(s))
		for _, q := range []*model.Quantity{s.Ends().For, s.Warmth().Over} {
			if q != nil {
				t += q.SI
			}
		}
		time, events = time+times*(t+latest(s.Ends().Allow)+60), events+times*(n+1)
	}
	return time, events
}

func latest(g *model.Guard) float64 {
	if g == nil || g.Latest == nil {
		return 0
	}
	return g.Latest.SI
}
