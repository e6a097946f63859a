package steep

import (
	"errors"
	"math"

	"maltwright/sim/air"
	"maltwright/sim/grain"
)

const (
	// OpenDepth, m: depth of the drained bed when its open face is not given;
	// common practice.
	OpenDepth = 0.3
)

// Air is what the drained grain stands in between soaks.
type Air struct {
	T        float64  // °C, 0 to 45; the grain is taken to be as warm
	RH       float64  // relative humidity, 0 to 1
	Area     *float64 // of the bed's open face, m²; nil means a swollen bed 0.3 m deep
	Speed    float64  // of the air over the face, m/s, 0 to 5
	Pressure *float64 // Pa; nil means 101,325
	Drawn    float64  // m³/s for each kg of grain as received that is drawn through the bed, 0 to 0.01
	Spray    *Spray   // water over the bed; nil for none
}

// Rest drains the grain and keeps it in air for dt seconds, above nil and at
// most 30 days. The loose water that drips off is not followed: what a drained
// weighing sees is what the kernels hold. Out of range, or when the air would dry
// the core under half its first moisture, it returns a *[air.RangeError] and
// leaves the state as it was.
func (s *State) Rest(dt float64, a Air) error {
	face, err := s.face(a)
	w, more := a.wind()
	if err = errors.Join(err, more, a.Spray.check(), s.checkStep(dt)); err != nil {
		return err
	}
	next := *s
	next.lies(a)
	next.submerged, next.oxygen, next.wetted = false, 0, next.wetted || a.Spray != nil
	for dt > 0 {
		dt -= next.restPart(dt, &face, w, a)
	}
	x0 := s.first
	if err := air.Within("core moisture in the rest", x0+next.water.core, "kg/kg", x0/2, 4); err != nil {
		return err
	}
	*s = next
	return nil
}

// face is the open face of the bed toward the air.
func (s *State) face(a Air) (grain.Face, error) {
	face, err := grain.NewFace(a.T, a.RH, a.Speed, a.Pressure)
	return face, errors.Join(err,
		air.Within("air of the rest", a.T, "°C", 0, 45),
		air.Within("open face of the bed", s.openArea(a), "m²", 0, 1e6))
}

// drying is the water that evaporates, kg/kg of first dry matter per second: from the open
// face, which is as warm as the bed, and into the air that is drawn through. A bed colder
// than the dew point takes up no dew. Grain that was never wetted does not dry in a rest.
func (s *State) drying(face *grain.Face, w wind, area float64) float64 {
	if !s.wetted {
		return 0
	}
	return (math.Max(0, face.Evaporation(s.t, 1))*area + w.takes(s.t)*s.received()) / s.lot.DryMass
}

// openArea is the open face of the drained bed, m².
func (s *State) openArea(a Air) float64 {
	if a.Area != nil {
		return *a.Area
	}
	return s.lot.SwollenVolume() / OpenDepth
}

// breathesAir is the oxygen that the kernels of a drained bed can take, kg per kg of first
// dry matter and second, of what they want: as far as it comes in by diffusion from the open
// face, see [grain.StillAccess], and what the air that is drawn through carries, m³/s for each kg
// of grain as received.
func (s *State) breathesAir(wanted, clock, x, area, drawn float64) float64 {
	if !(wanted > 0) {
		return wanted
	}
	volume := s.lot.BedVolume(x, clock)
	still := wanted * grain.StillAccess(wanted*s.lot.DryMass/volume, volume/area)
	return still + drawn*grain.AirOxygen*(1+s.lot.Moisture0)
}

// restPart goes on to the end of dt, or until film and husk are used up, whichever comes
// first, and returns the seconds it took.
func (s *State) restPart(dt float64, face *grain.Face, w wind, a Air) float64 {
	spray, area := a.Spray, s.openArea(a)
	st := stretch{dt: dt, maxStep: growthStep}
	if w.flow > 0 || spray != nil {
		st.dt = math.Min(st.dt, warmStep)
	}
	drying := s.drying(face, w, area)
	t, whole := s.t, st.dt
	st.t = s.cooled(w, spray, st.dt)
	usedUp := s.waters(&st, s.thirstInAir(st.t), drying, spray)
	if st.dt < whole { // it was cut
		s.t = t
		st.t = s.cooled(w, spray, st.dt)
	}
	leached := s.leached
	st.leached = func(float64) float64 { return leached }
	st.inAir = func(wanted, clock, x float64) float64 { return s.breathesAir(wanted, clock, x, area, a.Drawn) }
	s.grow(&st)
	before := s.water
	s.water = st.water(st.dt)
	s.dried += drying * st.dt
	if spray != nil {
		s.taken += s.water.sum() - before.sum() + drying*st.dt
	}
	if usedUp {
		s.water = uptake{core: s.water.sum()}
	}
	if s.wetted {
		s.airTime += st.dt
		s.held = max(0, s.held-st.dt)
		s.wetTime += st.dt
	}
	return st.dt
}
