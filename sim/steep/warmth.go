package steep

import (
	"math"

	"maltwright/sim/air"
)

// Begin says how warm the grain is before its first soak, °C.
func (s *State) Begin(t float64) { s.t, s.warm = t, true }

// T is the temperature of the grain, °C; not a number before its first soak or rest, unless
// Begin gave it.
func (s *State) T() float64 {
	if !s.warm {
		return math.NaN()
	}
	return s.t
}

// heat is the heat capacity of the drained grain, J/K.
func (s *State) heat() float64 {
	return s.DryMatter() * (s.lot.Profile.Malt.DryHeat() + air.WaterHeat*s.X())
}

// received is the grain as it was received, kg.
func (s *State) received() float64 { return s.lot.DryMass * (1 + s.lot.Moisture0) }

// pour brings grain and fresh water to one temperature, where it is said how much water:
//
//	t = (C·t(grain) + c·m·t(water))/(C + c·m)
//
// C heat, m the water, kg, c its specific heat. The vessel takes no part.
// Fresh water makes up for as long without oxygen as kernels bear: barley lives through three
// waters of a day each (common practice).
func (s *State) pour(w Water) {
	s.held = max(0, s.held-s.lot.Profile.Drowns)
	s.before = s.water.sum()
	if w.PerKg == nil || !s.warm {
		s.Begin(w.T)
		return
	}
	grain, water := s.heat(), air.WaterHeat*w.perKg()*s.received()
	s.t = (grain*s.t + water*w.T) / (grain + water)
}

// standsIn keeps grain in water of which it is not said how much as warm as that.
func (s *State) standsIn(w Water) {
	if w.PerKg == nil {
		s.t = w.T
	}
}

// warmed moves the temperature through dt seconds under water, where it is said how much
// water, and gives its mean over them. Fresh water that runs in draws it toward its own,
// with the time constant C/(c·overflow). Grain that takes up water gives off the heat of its
// wetting (see [drying.Malt.Wetting]), counted from the moisture at the beginning of the
// stretch. What breathing adds, under 0.02 K an hour, and what passes through the vessel is
// not followed.
func (s *State) warmed(w Water, dt float64) (mean float64) {
	if w.PerKg == nil {
		return s.t
	}
	poured := w.perKg()*s.received() - (s.water.sum()-s.before)*s.lot.DryMass
	c := s.heat() + air.WaterHeat*math.Max(0, poured)
	s.t += s.wettingHeat(dt) / c
	mean, s.t = relax(s.t, w.T, dt, c/(air.WaterHeat*w.Overflow*s.received()))
	return mean
}

// wettingHeat is the heat that the grain gives off as it takes up water for dt seconds, J.
func (s *State) wettingHeat(dt float64) float64 {
	p := &s.lot.Profile
	then := s.water.soaked(dt, s.thirst(s.t), s.most())
	before, _ := p.Malt.Wetting(s.X())
	after, _ := p.Malt.Wetting(s.x(then.sum(), s.respired, s.leached))
	return (before - after) * s.DryMatter()
}

// relax moves a temperature toward another for dt seconds with a time constant, s, and
// gives its mean and its end; an infinite time constant leaves it.
func relax(t, toward, dt, constant float64) (mean, end float64) {
	if math.IsInf(constant, 1) || math.IsNaN(constant) {
		return t, t
	}
	n := dt / constant
	mean = toward + (t-toward)*-math.Expm1(-n)/n
	return mean, toward + (t-toward)*math.Exp(-n)
}
