package follow

import (
	"math"

	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

// Stand is the state of the batch now.
type Stand struct {
	Sight forecast.Sight // of the centre
	Began float64        // s from the first soak, of the step it is in

	Moisture, Weight, Lost                           ensemble.Spread // wet basis 0 to 1; kg on the scale; share of the grain's dry matter
	Chit, Acrospire, Modification, Bed, AirOff, Malt ensemble.Spread // as in a Sight; Share 0 where there is none
}

// stand is what the members see now.
func (f *Following) stand() Stand {
	of := func(value func(*forecast.Sight) float64) ensemble.Spread {
		list := make([]float64, len(f.Ensemble.Members))
		for i, m := range f.Ensemble.Members {
			if list[i] = math.NaN(); f.Trial.Seen(m) {
				list[i] = value(&m.Seen[len(m.Seen)-1])
			}
		}
		return ensemble.SpreadOf(list)
	}
	s := Stand{
		Moisture: of(func(s *forecast.Sight) float64 { return s.Moisture }), Weight: of(func(s *forecast.Sight) float64 { return s.Weight }),
		Lost: of(func(s *forecast.Sight) float64 { return s.Lost }), Chit: of(func(s *forecast.Sight) float64 { return s.Chit }),
		Acrospire: of(func(s *forecast.Sight) float64 { return s.Acrospire }), Modification: of(func(s *forecast.Sight) float64 { return s.Modification }),
		Bed: of(func(s *forecast.Sight) float64 { return s.Bed }), AirOff: of(func(s *forecast.Sight) float64 { return s.AirOff }),
		Malt: of(func(s *forecast.Sight) float64 { return s.Malt }),
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
