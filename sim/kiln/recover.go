package kiln

import "maltwright/sim/air"

// A heat exchanger stands between the exhaust that leaves the kiln and the fresh air that
// replaces it, kg for kg of dry air. It is known by its temperature ratio
//
//	r = (T2 − T0)/(T − T0)
//
// T0 being the outside air, T2 the fresh air behind it and T the exhaust before it, °C: what
// [en-308] measures of one (from memory), and, while nothing condenses, the share of the
// exhaust's sensible heat above the outside air that it gives back. So it gives
//
//	q = r·(1 − back)·g·c·(T − T0)   W/m²
//
// c being the specific heat of the drier of the two airs, J/(kg K): the fresh air never comes to
// more than T, nor the exhaust below T0. Exhaust that is cooled below its dew point lets
// water go, which keeps it warmer and changes nothing of q; that a wet exchanger has a somewhat
// higher r is left out, and so are frost in it and heat through its walls.
//
// A flap leads past it what would make the air warmer than the kiln is set to, all of
// it where the exhaust is no warmer than outside, and while room air cools the malt. Air that
// comes from another kiln does not pass it.

// mostRecovery bounds the temperature ratio of a heat exchanger: none comes to 1.
const mostRecovery = 0.98

// offered gives the heat that the exchanger can give to the fresh air, W/m².
func (b *Bed) offered(f flow) float64 {
	warmer := f.out.t - f.fresh.t
	if b.kit.Recovers == 0 || warmer <= 0 || b.set.Target == Fresh || b.set.Target == AsComes {
		return 0
	}
	moist := air.DryAirHeat + air.VapourHeat*min(f.fresh.w, f.out.w)
	return b.kit.Recovers * (1 - f.back) * f.g * moist * warmer
}

// recovered is what it gives of that, W/m²: no more than the air is short of.
func (b *Bed) recovered(f flow) float64 {
	if b.kit.Recovers == 0 {
		return 0
	}
	return min(b.offered(f), max(0, b.need(f)))
}

// condensed gives the water that the exhaust lets go in the exchanger, kg/(m² s): what it
// then holds beyond saturation at the temperature T′ at which
//
//	h(T′, W′) + (W − W′)·c_w·T′ = h(T, W) − q/((1 − back)·g)
func (b *Bed) condensed(f flow) float64 {
	given, fresh := b.recovered(f), (1-f.back)*f.g
	if given == 0 {
		return 0
	}
	left := f.out.enthalpy() - given/fresh
	low := f.out.t - given/fresh/(air.DryAirHeat+air.VapourHeat*f.out.w)
	var water float64
	root(low, low+mostWarmer, low, air.DryAirHeat, enoughKelvin*air.DryAirHeat, func(t float64) float64 {
		held := min(f.out.w, air.HumidityRatio(min(air.Saturation(t), mostVapour*b.ambient.P), b.ambient.P))
		water = f.out.w - held
		return stream{t: t, w: held}.enthalpy() + water*air.WaterHeat*t - left
	})
	return water * fresh
}

// mostWarmer is by how much water that is let go can keep exhaust warmer than it would be,
// K: more than it ever does.
const mostWarmer = 150.0
