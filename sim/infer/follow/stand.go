package follow

import (
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

// Stand is the state of the batch now.
type Stand struct {
	Sight forecast.Sight // of the centre
	Began float64        // s from the first soak, of the step it is in

	Moisture, Weight, Lost                           ensemble.Spread // wet basis 0 to 1; kg on the scale; share of the grain's dry matter
	Chit, Acrospire, Modification, Bed, AirOff, Malt ensemble.Spread // as in a Sight; Share 0 where there is none. AirOff is the air of a still oven where it lies in one
}

// stand is what the members see now.
func (f *Following) stand() Stand {
	s := Stand{
		Moisture: f.seen(func(n *now) float64 { return n.moisture }), Weight: f.seen(func(n *now) float64 { return n.weight }),
		Lost: f.seen(func(n *now) float64 { return n.lost }), Chit: f.seen(func(n *now) float64 { return n.chit }),
		Acrospire: f.seen(func(n *now) float64 { return n.acrospire }), Modification: f.seen(func(n *now) float64 { return n.modification }),
		Bed: f.seen(func(n *now) float64 { return n.bed }), AirOff: f.seen(func(n *now) float64 { return n.airOff }),
		Malt: f.seen(func(n *now) float64 { return n.malt }),
	}
	if n := len(f.Centre.Seen); n > 0 && f.Trial.Seen(f.Centre) {
		s.Sight = f.Centre.Seen[n-1]
	}
	for _, st := range f.Centre.Stages {
		for _, step := range st.Steps {
			if step.Start <= f.Now && f.Now <= step.End {
				s.Began = step.Start
			}
		}
	}
	return s
}
