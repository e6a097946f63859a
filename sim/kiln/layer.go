package kiln

import (
	"maltwright/sim/air"
	"maltwright/sim/drying"
)

// bedLayer is one slice of the bed.
type bedLayer struct {
	x, h float64 // moisture, kg/kg dry basis; enthalpy, J per kg of dry matter
	t    float64 // °C, from x and h: the kernels at the exit
	mean float64 // °C, the mean of the kernels
	skew float64 // how far the mean lies back from the exit; see profile.go

	flux       float64          // of water to the air, kg/(m² s), as last found
	refX, refH float64          // where an implicit stage starts from
	atX, atT   float64          // where it ends
	in, out    stream           // the air at its faces there
	rates      [stageCount]rate // of the step being taken
}

// rate is the change of a layer per second.
type rate struct{ x, h float64 }

// stream is air at a face of a layer: temperature, °C, and humidity ratio.
type stream struct{ t, w float64 }

func (s stream) at(p float64) air.State { return air.State{T: s.t, W: s.w, P: p} }

func (s stream) enthalpy() float64 { return s.at(0).Enthalpy() }

// dewFactor says how much more freely a wet surface takes up dew than it
// gives water, since dew need not pass the kernel (calibrated: any large number
// does).
const dewFactor = 100.0

// meeting is a layer with the air that comes to it over an implicit stage of
// length a, s: x = refX − a·e/dry, h = refH + a·(heat gained)/dry.
type meeting struct {
	exchange
	material   drying.Material
	in         stream
	wall       float64 // temperature of the walls, °C
	vapour     float64 // pressure in the air that comes, Pa
	pressure   float64 // Pa
	dry        float64 // kg/m²
	perDry     float64 // a/dry
	dryHeat    float64 // specific heat of the dry matter, J/(kg K)
	sensible   float64 // W/(m² K) by convection
	lift       float64 // share of the way from t to in.t at which the kernels stand on average
	draw       float64 // 1/reach for the mean kernel's surface
	refX, refH float64
}

// found is a trial flux with what follows from it.
type found struct {
	x, t, tByE float64
	miss       float64 // vapour pressure at the surface less what the flux needs, Pa
	slope      float64 // its derivative by the flux
}

// try gives the state of the layer, and how far the vapour pressure of its
// surface is from what would drive the flux e, kg/(m² s), into the air.
// Enthalpy being linear in temperature, the temperature follows from e at once.
func (m *meeting) try(e float64) found {
	x := m.refX - m.perDry*e
	wetting, wettingByX := m.material.Wetting(x)
	heat := m.refH - wetting + m.perDry*(m.sensible*m.in.t+m.radiant*m.wall-e*air.EvaporationHeat)
	capacity := m.dryHeat + air.WaterHeat*x + m.perDry*(m.sensible+m.radiant+e*air.VapourHeat)
	f := found{x: x, t: heat / capacity}
	switch { // a trial far off the mark: say which way, and leave it
	case !(f.t > drying.Coldest-60):
		f.miss = -saturated
		return f
	case !(f.t < Hottest+15):
		f.miss = saturated
		return f
	}
	xByE := -m.perDry
	f.tByE = -m.perDry * (air.EvaporationHeat - wettingByX - f.t*(air.WaterHeat-air.VapourHeat)) / capacity

	mean, meanByE := f.t+m.lift*(m.in.t-f.t), f.tByE*(1-m.lift)
	surface, surfaceByE := m.surface(e, x, mean, xByE, meanByE)
	rh, rhByX, rhByT := m.material.Humidity(surface, mean)
	ps, psByT := air.SaturationSlope(mean)
	need, needByE := m.need(e)
	f.miss = rh*ps - need
	f.slope = (rhByX*surfaceByE+rhByT*meanByE)*ps + rh*psByT*meanByE - needByE
	return f
}

// saturated is a vapour pressure beyond any here, Pa.
const saturated = 1e9

// surface gives the moisture that the kernel's surface must have to be fed the
// flux e from within, x − e/(dry·k), and its derivative by e.
func (m *meeting) surface(e, x, t, xByE, tByE float64) (moisture, byE float64) {
	k, kByX, kByT := m.material.Rate(x, t)
	if e < 0 {
		free, freeByX := m.material.FreeWater(x)
		ease := 1 + (dewFactor-1)*free
		kByX = kByX*ease + k*(dewFactor-1)*freeByX
		kByT *= ease
		k *= ease
	}
	perK := 1 / (m.dry * k)
	drop := e * perK
	return x - drop, xByE - perK + drop/k*(kByX*xByE+kByT*tByE)
}

// need gives the vapour pressure, Pa, that the surface must have to send e
// into the air, and its derivative.
func (m *meeting) need(e float64) (pressure, byE float64) {
	w := m.in.w + e/m.g
	perSum := 1 / (air.MassRatio + w)
	out := m.pressure * w * perSum
	return m.vapour + (out-m.vapour)*m.draw, m.pressure * air.MassRatio * perSum * perSum / m.g * m.draw
}

// off gives the air that leaves the layer when e has gone into it.
func (m *meeting) off(e, t float64) stream {
	w := m.in.w + e/m.g
	moist := air.DryAirHeat + air.VapourHeat*m.in.w
	gain := (e*air.VapourHeat*t - m.sensible*(m.in.t-t)) / m.g
	return stream{t: (moist*m.in.t + gain) / (air.DryAirHeat + air.VapourHeat*w), w: w}
}

// heat gives what the layer gains, W/m², with e leaving it at t.
func (m *meeting) heat(e, t float64) float64 {
	return m.sensible*(m.in.t-t) + m.radiant*(m.wall-t) - e*air.VapourEnthalpy(t)
}
