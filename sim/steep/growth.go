package steep

import (
	"math"

	"maltwright/sim/grain"
	"maltwright/sim/work"
)

const (
	// waterAccess: the growth clock under water that still holds oxygen,
	// against air. Calibrated to chit above 80 % at cast [canadian-guide].
	waterAccess = 0.8
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
// fast the corns burn.
type stretch struct {
	dt      float64 // s
	t       float64 // °C
	access  float64 // of air, 0 to 1
	maxStep float64 // s
	water   func(dt float64) uptake
	leached func(dt float64) float64

	// What the corns burn, kg/kg of first dry matter per second; the other is nil.
	burnInWater func(dt float64) float64
	burnInAir   func(clock, w float64) float64
}

// moment is a time in a stretch and what does not depend on growth there.
type moment struct {
	drunk, leached float64 // kg/kg of first dry matter
	burnt          float64 // kg/kg of first dry matter per second, in water
}

func (st *stretch) moment(at float64) moment {
	m := moment{drunk: st.water(at).sum(), leached: st.leached(at)}
	if st.burnInWater != nil {
		m.burnt = st.burnInWater(at)
	}
	return m
}

// grow runs clock, respiration and chit through a stretch with the classical
// Runge–Kutta method.
func (s *State) grow(st *stretch) {
	n := math.Max(1, math.Ceil(st.dt/st.maxStep))
	h := st.dt / n
	_ = s.meter.Spend(work.Wet * int(n)) // whoever drives the steep sees that it is used up
	due, start := s.lot.Profile.Due(s.clock), st.moment(0)
	for i := range int(n) {
		middle, end := st.moment((float64(i)+0.5)*h), st.moment(float64(i+1)*h)
		g1, r1 := s.growRate(st, &start, s.clock, s.respired)
		g2, r2 := s.growRate(st, &middle, s.clock+h/2*g1, s.respired+h/2*r1)
		g3, r3 := s.growRate(st, &middle, s.clock+h/2*g2, s.respired+h/2*r2)
		g4, r4 := s.growRate(st, &end, s.clock+h*g3, s.respired+h*r3)
		s.clock += h / 6 * (g1 + 2*g2 + 2*g3 + g4)
		s.respired += h / 6 * (r1 + 2*r2 + 2*r3 + r4)
		before := due
		due, start = s.lot.Profile.Due(s.clock), end
		s.chitted += s.lot.Chitting(before, due, st.t)
	}
}

func (s *State) growRate(st *stretch, m *moment, clock, respired float64) (perSecond, burnt float64) {
	x := s.x(m.drunk, respired, m.leached)
	w := x / (1 + x)
	burnt = m.burnt
	if st.burnInAir != nil {
		burnt = st.burnInAir(clock, w)
	}
	return s.lot.ClockSpeed(clock, st.t, w, st.access) / hour, burnt
}

// breath is the dry matter burnt by the oxygen taken from water, kg per kg of
// first dry matter and second, at the time t since the first wetting.
func (s *State) breath(t float64) float64 {
	mg := firstDemand * math.Pow(demandGrowth, math.Min(t/demandTime, 1)) / hour
	return mg * milligram * (1 + s.lot.Moisture0) / grain.StarchO2
}
