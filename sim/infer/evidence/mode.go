package evidence

import "context"

// Mode gives the axes that Fit finds for one trial, without how well they are known, which
// costs forecasts of its own.
func Mode(ctx context.Context, t *Trial) ([]float64, error) {
	m, err := searchOf(ctx, []*Trial{t}, Alone(t), 0).mode()
	return m.z, err
}

// place is where a search has come to, and what the trials have there and around it.
type place struct {
	z           []float64
	base, moved []point // moved is nil where it is not known
	cost        float64
}

// mode goes down from the usual to where the cost is least.
func (s *search) mode() (place, error) {
	z := make([]float64, s.dims)
	base, err := s.at(z)
	if err != nil {
		return place{}, err
	}
	return s.down(place{z: z, base: base})
}

// down does the same from a place.
func (s *search) down(at place) (place, error) {
	at.cost = s.cost(at.z, at.base)
	for range rounds {
		if at.moved == nil {
			var err error
			if at.moved, err = s.around(at.z, at.base); err != nil {
				return place{}, err
			}
		}
		h, g := s.curvature(at.z, at.base, at.moved)
		next, found, better, err := s.stepped(at.z, h, g, at.cost)
		if err != nil {
			return place{}, err
		}
		gain := at.cost - better
		if gain > 0 {
			at = place{z: next, base: found, cost: better}
		}
		if gain < goodCost {
			break
		}
	}
	return at, nil
}
