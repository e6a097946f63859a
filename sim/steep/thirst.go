package steep

const (
	// eagerFrom, s of air in all: when kernels begin to take up breathing, by which the core
	// drinks faster; calibrated, mechanism [yin-1996].
	eagerFrom = 3 * hour
	// eagerBy, s of air in all: when they have; calibrated, as eagerFrom.
	eagerBy = 9 * hour
	// eagerness, m: core speed after that; calibrated to the 43–45 % of
	// [canadian-guide].
	eagerness = 1.75
)

// eager is m, the speed of the core after so many seconds of air: 1 up to eagerFrom, by the
// smooth step s²(3 − 2s) to eagerness at eagerBy.
func eager(airTime float64) float64 {
	s := min(1, max(0, (airTime-eagerFrom)/(eagerBy-eagerFrom)))
	return 1 + (eagerness-1)*s*s*(3-2*s)
}

// eagerOver is the integral of eager over the time in air, s.
func eagerOver(airTime float64) float64 {
	const ramp = eagerBy - eagerFrom
	s := min(1, max(0, (airTime-eagerFrom)/ramp))
	return airTime + (eagerness-1)*(ramp*s*s*s*(1-s/2)+max(0, airTime-eagerBy))
}

// thirst is how fast the core drinks in a stretch.
type thirst struct {
	speed float64 // s/k1, per second
	aired float64 // s of air at its beginning
	inAir bool    // and more of it as it goes on
}

// over is the integral of m·s/k1 over the first dt seconds of the stretch.
func (c thirst) over(dt float64) float64 {
	if !c.inAir {
		return c.speed * eager(c.aired) * dt
	}
	return c.speed * (eagerOver(c.aired+dt) - eagerOver(c.aired))
}

// thirst is that of kernels under water at t °C.
func (s *State) thirst(t float64) thirst {
	return thirst{s.speed * s.lot.UptakeForm(s.Moisture()) * uptakeRate(t, s.lot.Profile.UptakeEnergy), s.airTime, false}
}

// thirstInAir is that of drained kernels, whose time in air goes on; that of grain which was
// never wetted does not count.
func (s *State) thirstInAir(t float64) thirst {
	c := s.thirst(t)
	c.inAir = s.wetted
	return c
}
