package steep

import (
	"errors"
	"math"

	"maltwright/sim/air"
)

// Spray is water over the drained bed. Husk and film stay full, as under water, and the
// kernels breathe as in air.
type Spray struct {
	T    float64 // °C, 0 to 40
	Rate float64 // litres a second for each kg of grain as received, 0 to 0.1; nil for just what keeps it wet
}

func (p *Spray) check() error {
	if p == nil {
		return nil
	}
	return errors.Join(
		air.Within("temperature of the spray", p.T, "°C", lowestWater, highestWater),
		air.Within("spray", p.Rate, "l/s for each kg", 0, 0.1))
}

// wind is the air that is drawn through the bed.
type wind struct {
	in   air.State
	flow float64 // kg of dry air a second for each kg of grain as received
}

func (a Air) wind() (wind, error) {
	if err := air.Within("air drawn through the bed", a.Drawn, "m³/s for each kg", 0, 0.01); err != nil || a.Drawn == 0 {
		return wind{}, err
	}
	p := air.StandardPressure
	if a.Pressure != nil {
		p = *a.Pressure
	}
	in, err := air.FromRH(a.T, a.RH, p)
	if err != nil {
		return wind{}, err
	}
	return wind{in, a.Drawn / in.Volume()}, nil
}

// off is the air as it leaves a bed of t °C: as warm, and saturated.
func (w wind) off(t float64) air.State {
	return air.State{T: t, W: air.HumidityRatio(air.Saturation(t), w.in.P), P: w.in.P}
}

// takes is the water that the air takes out of a wet bed of t °C, kg a second for each kg of
// grain as received.
func (w wind) takes(t float64) float64 {
	if w.flow == 0 {
		return 0
	}
	return math.Max(0, w.flow*(w.off(t).W-w.in.W))
}

// lies makes drained grain as warm as the air, which it is taken to be while nothing is drawn
// through it and no measured water runs over it.
func (s *State) lies(a Air) {
	moved := a.Drawn > 0 || a.Spray != nil && a.Spray.Rate > 0
	if moved && s.warm && !s.submerged && a.T == s.airT {
		return
	}
	s.airT = a.T
	s.Begin(a.T)
}

// cooled moves the temperature of the bed through dt seconds of a rest, and gives its mean
// over them. Air that is drawn through takes out
//
//	q = m·(h(off) − h(in) − c·t·(w(off) − w(in)))
//
// h the enthalpy and w the humidity ratio of the air, m its flow, c the specific heat of
// water, which draws the bed toward the wet bulb of the air; a measured spray draws it toward
// its own temperature. The warmth of the kernels themselves goes where it goes without: the
// bed is taken to be as warm as the air that nothing is drawn from.
func (s *State) cooled(w wind, spray *Spray, dt float64) (mean float64) {
	each := s.heat() / s.received() // J/K for each kg of grain as received
	toward, rate := 0.0, 0.0
	add := func(t, perSecond float64) {
		if perSecond > 0 {
			toward = (toward*rate + t*perSecond) / (rate + perSecond)
			rate += perSecond
		}
	}
	if w.flow > 0 && s.wetted {
		off := w.off(s.t)
		q := w.flow * (off.Enthalpy() - w.in.Enthalpy() - air.WaterHeat*s.t*(off.W-w.in.W))
		if bulb, err := w.in.WetBulb(); err == nil && q > 0 && s.t > bulb {
			add(bulb, q/(s.t-bulb)/each)
		}
	}
	if spray != nil {
		add(spray.T, spray.Rate*air.WaterHeat/each)
	}
	if rate == 0 {
		return s.t
	}
	mean, s.t = relax(s.t, toward, dt, 1/rate)
	return mean
}

// waters sets how the waters move in a stretch of a rest, and tells whether it is cut where
// film and husk are used up.
func (s *State) waters(st *stretch, c thirst, drying float64, spray *Spray) (usedUp bool) {
	from, most := s.water, s.most()
	if spray == nil {
		lasts := from.lasts(st.dt, c, drying, most)
		usedUp = lasts < st.dt
		st.dt = lasts
		st.water = func(dt float64) uptake { return from.rested(dt, c, drying, most) }
		return usedUp
	}
	if from.film < 0.999*most.film || from.husk < 0.999*most.husk {
		st.maxStep = fillStep
		st.dt = math.Min(st.dt, fillEnd)
	}
	st.water = func(dt float64) uptake { return from.soaked(dt, c, most) }
	return false
}
