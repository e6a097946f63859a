package pneumatic

import (
	"math"

	"maltwright/sim/air"
)

// mixture is the air that comes to the plant: fresh air and exhaust led back. It
// may carry fog.
type mixture struct {
	h float64 // J per kg of dry air
	w float64 // kg of water per kg of dry air
}

// mix gives what comes to the plant when h and w leave the bed.
func (s *supplied) mix(h, w float64) mixture {
	return mixture{
		h: (1-s.Return)*s.room.Enthalpy() + s.Return*h,
		w: (1-s.Return)*s.room.W + s.Return*w,
	}
}

// plant makes air-on out of a mixture.
type plant struct {
	*supplied
	flow float64 // m³/s at air-on
	mix  mixture
	lift float64 // K by which a fan behind the spray warms the air
	fan  float64 // heat of the fan, W
}

func (s *supplied) plant(flow float64, mix mixture) plant {
	p := plant{supplied: s, flow: flow, mix: mix}
	if s.Fan == (Fan{}) {
		return p
	}
	at := air.State{T: s.T, W: s.room.W, P: s.pressure}
	v, moist := at.Volume(), air.DryAirHeat+air.VapourHeat*at.W
	p.lift = s.Fan.behind() * v / moist
	p.fan = flow * s.Fan.heat(flow, v, moist)
	return p
}

// on gives the air-on of t °C: sprayed up to the humidity asked, as far as air
// can hold it that the fan has yet to warm. Water is taken out of the air where
// there is a cooler, and else only as fog.
func (p *plant) on(t float64) air.State {
	most := p.ratio(air.Saturation(t - p.lift))
	w := min(most, p.ratio(p.RH*air.Saturation(t)))
	if w > p.mix.w && p.NoSpray || w < p.mix.w && power(p.Cooler) == 0 {
		w = min(most, p.mix.w)
	}
	return air.State{T: t, W: w, P: p.pressure}
}

// ratio is the humidity ratio at a vapour pressure, Pa, up to mostVapour of all of it.
func (s *supplied) ratio(vapour float64) float64 {
	return air.HumidityRatio(min(vapour, mostVapour*s.pressure), s.pressure)
}

// mostVapour, of the pressure: in thin air warm grain would boil, which no bed does.
const mostVapour = 0.9

// dryAir is the flow of dry air, kg/s.
func (p *plant) dryAir(on air.State) float64 { return p.flow / on.Volume() }

// draw is the power, W, that it takes to make this air-on: of the heater above
// nil, of the cooler below. Spray comes, and water leaves, at the temperature of
// air-on.
func (p *plant) draw(on air.State) float64 {
	water := (on.W - p.mix.w) * air.WaterHeat * on.T
	return p.dryAir(on)*(on.Enthalpy()-p.mix.h-water) - p.fan
}

// reach gives the air-on nearest to t °C that cooler and heater can make, and the
// power, W, that they lack for t.
func (p *plant) reach(t float64) (on air.State, short float64) {
	on = p.on(t)
	draw := p.draw(on)
	least, most := -power(p.Cooler), power(p.Heater)
	switch {
	case draw > most:
		return p.with(most, coldestOn, t), draw - most
	case draw < least:
		return p.with(least, t, warmestOn), least - draw
	}
	return on, 0
}

// No air-on is sought beyond these, °C.
const coldestOn, warmestOn = -40.0, 80.0

// with gives the air-on between two temperatures that takes a power, W.
func (p *plant) with(power, low, high float64) air.State {
	for high-low > 1e-7 {
		if mid := (low + high) / 2; p.draw(p.on(mid)) > power {
			high = mid
		} else {
			low = mid
		}
	}
	return p.on((low + high) / 2)
}

// book adds up what the plant did in dt seconds with the exhaust as it was.
func (l *Plant) book(s *supplied, f *flow, dt float64) {
	if f.g == 0 {
		return
	}
	p := s.plant(f.volume, s.mix(f.offH, f.offW))
	draw, dry := p.draw(f.on), dt*f.g
	l.Heater += dt * max(0, draw)
	l.Cooler += dt * max(0, -draw)
	l.PeakHeater = math.Max(l.PeakHeater, draw)
	l.PeakCooler = math.Max(l.PeakCooler, -draw)
	l.Short += dt * f.short
	l.PeakShort = math.Max(l.PeakShort, f.short)
	l.Fan += dt * p.fan
	l.Sprayed += dry * max(0, f.on.W-p.mix.w)
	l.Drained += dry * max(0, p.mix.w-f.on.W)
	l.WaterHeat += dry * (f.on.W - p.mix.w) * air.WaterHeat * f.on.T
	l.AirPassed += dry
	l.Vented += dry * (1 - s.Return) * (f.offW - s.room.W)
	l.VentedHeat += dry * (1 - s.Return) * (f.offH - s.room.Enthalpy())
}
