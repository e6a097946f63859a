package steep

import (
	"math"

	"maltwright/sim/grain"
	"maltwright/sim/work"
)

const (
	// growthStep, s: the longest step of the growth integral; the error in the
	// clock is then under 1e-6 of it.
	growthStep = 900.0
	// warmStep, s: how far warmth or oxygen is followed at a time where they move by
	// themselves.
	warmStep = 600.0
	// fillStep, s: the same while film and husk fill.
	fillStep = 30.0
)

// stretch is a time of constant conditions: how the waters move in it, and how
// much oxygen the kernels can take.
type stretch struct {
	dt      float64 // s
	t       float64 // °C
	lack    float64 // share of the time in which the kernels count as without oxygen, under water
	maxStep float64 // s
	water   func(dt float64) uptake
	leached func(dt float64) float64

	// What the kernels can take, kg of oxygen per kg of first dry matter and second: under
	// water at a time of the stretch, in air for what they want. The other is nil.
	inWater func(at float64) float64
	inAir   func(wanted, clock, x float64) float64
}

// moment is a time in a stretch and what does not depend on growth there.
type moment struct {
	drunk, leached float64 // kg/kg of first dry matter
	oxygen         float64 // that can be taken from water, kg per kg of first dry matter and second
}

func (st *stretch) moment(at float64) moment {
	m := moment{drunk: st.water(at).sum(), leached: st.leached(at)}
	if st.inWater != nil {
		m.oxygen = st.inWater(at)
	}
	return m
}

// growth is what grows in a stretch, or how fast, each second.
type growth struct {
	clock    float64 // °C·h
	respired float64 // kg/kg of first dry matter
	debt     float64 // share
}

func (g growth) plus(h float64, r growth) growth {
	return growth{g.clock + h*r.clock, g.respired + h*r.respired, g.debt + h*r.debt}
}

// grow runs clock, respiration, debt and chit through a stretch with the classical
// Runge–Kutta method.
func (s *State) grow(st *stretch) {
	n := math.Max(1, math.Ceil(st.dt/st.maxStep))
	h := st.dt / n
	_ = s.meter.Spend(work.Wet * int(n)) // whoever drives the steep sees that it is used up
	due, start := s.lot.Profile.Due(s.clock), st.moment(0)
	for i := range int(n) {
		middle, end := st.moment((float64(i)+0.5)*h), st.moment(float64(i+1)*h)
		g := growth{s.clock, s.respired, s.debt}
		g1 := s.growRate(st, &start, g)
		g2 := s.growRate(st, &middle, g.plus(h/2, g1))
		g3 := s.growRate(st, &middle, g.plus(h/2, g2))
		g4 := s.growRate(st, &end, g.plus(h, g3))
		g = g.plus(h/6, g1).plus(h/3, g2).plus(h/3, g3).plus(h/6, g4)
		s.clock, s.respired, s.debt = g.clock, g.respired, g.debt
		before := due
		due, start = s.lot.Profile.Due(s.clock), end
		s.chitted += s.lot.Chitting(before, due, st.t)
	}
}

// growRate gives the rates by one access for growth and burning alike: the oxygen that can
// be taken over what the kernels want, at most 1. What they owe makes them want less.
func (s *State) growRate(st *stretch, m *moment, g growth) growth {
	x := s.x(m.drunk, g.respired, m.leached)
	w, free := x/(1+x), 1-g.debt
	want := s.lot.RespirationSpeed(g.clock, st.t, w, free)
	could, lack := m.oxygen, st.lack
	if st.inAir != nil {
		could = st.inAir(grain.StarchO2*want, g.clock, x)
	}
	access := 1.0
	if could < grain.StarchO2*want {
		access = could / (grain.StarchO2 * want)
	}
	if st.inAir != nil {
		lack = 1 - access
	}
	return growth{
		clock:    s.lot.ClockSpeed(g.clock, st.t, w, access*free) / hour,
		respired: access * want,
		debt:     s.lot.DebtRate(g.debt, g.clock, w, lack),
	}
}
