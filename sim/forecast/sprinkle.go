package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// Sprinkling is water that was given to a growing piece.
type Sprinkling struct {
	At    float64 // s from the first soak
	Water float64 // kg
}

const (
	// sprinkleLook, s: how often somebody, or what measures, looks whether it is time to
	// sprinkle where no interval is given.
	sprinkleLook = 600.0
	// sprinkleRest, s: nobody sprinkles again before what was given is taken up (common
	// practice).
	sprinkleRest = 3600.0
)

// sprinkling makes the tick of what is sprinkled: at its interval, or as soon as its
// condition holds.
func (r *run) sprinkling(s *model.Sprinkle) *tick {
	due := &tick{every: sprinkleLook, next: sprinkleLook, place: s.Place(), leaves: true}
	if s.Every != nil {
		due.every, due.next, due.place = s.Every.SI, s.Every.SI, s.Every.Place
	}
	began := r.clock
	r.sprinkles(s, due, -sprinkleRest, func(at, kg float64) {
		r.f.Sprinkled = append(r.f.Sprinkled, Sprinkling{began + at, kg})
		r.f.Totals.Sprinkled += kg
	})
	return due
}

// sprinkles says what a tick does that was last sprinkled at an age of the piece, s, and
// tells of each sprinkling.
func (r *run) sprinkles(s *model.Sprinkle, due *tick, last float64, told func(at, kg float64)) {
	due.do = func(p physics) error {
		m := p.(growing)
		if s.When != nil && !holds(timed(m, m.age()), s.When) || s.Every == nil && m.age() < last+sprinkleRest {
			if s.Every == nil && s.When != nil && farFrom(m, s.When) {
				due.next += farLooks * sprinkleLook
			}
			return nil
		}
		kg := r.sprinkled(s, m)
		if kg <= 0 {
			return nil
		}
		last = m.age()
		told(last, kg)
		return m.sprinkle(kg, r.site.water)
	}
	due.afresh = func() *tick {
		own := new(tick)
		r.sprinkles(s, own, last, func(at, kg float64) {})
		return own
	}
}

// farLooks need not be taken while the grain is farAway from the moisture at which it is
// sprinkled: no growing bed loses as much by then.
const farLooks, farAway = 2, 0.01

// farFrom tells whether a condition waits for a moisture that is far away.
func farFrom(m growing, c *model.Condition) bool {
	for i := range c.Tests {
		if t := &c.Tests[i]; t.Measure == vocabulary.MeasureMoisture && t.Bound != nil && math.Abs(edge(t.Bound, m.moisture())-m.moisture()) > farAway && !testHolds(t, m.moisture(), "") {
			return true
		}
	}
	return false
}

// sprinkled is the water of one sprinkling, kg.
func (r *run) sprinkled(s *model.Sprinkle, m growing) float64 {
	if s.To != nil {
		b := m.batch()
		return (s.To.SI*b.Mass() - b.Water) / (1 - s.To.SI)
	}
	switch s.Water.Dimension {
	case quantity.Dose:
		return litreWeighs * s.Water.SI * r.p.Charge.SI
	case quantity.Volume:
		return litreWeighs * s.Water.SI
	}
	return s.Water.SI
}

// litreWeighs is the weight of water, kg/m³.
const litreWeighs = 1000.0
