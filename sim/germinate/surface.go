package germinate

import (
	"maltwright/sim/drying"
	"maltwright/sim/grain"
)

const (
	// wetX, kg/kg: from here the sorption curve is within 1e-5 of saturation at
	// any temperature of a bed, and the surface is taken as wet.
	wetX = 0.5
	// steepestActivity is more than the activity ever rises for each kg/kg.
	steepestActivity = 6.0
)

// waterActivity gives the relative humidity in balance with the open face of
// the bed, 0 to 1, at the moisture x, kg/kg dry basis, and t °C: the sorption
// curve of package drying, moved by the profile's offset. It is fitted to grain
// up to some 20 % wet basis; above 25 % it is within 0.005 of one, as a wet
// surface has it.
func waterActivity(x, t float64, p *grain.Profile) float64 {
	if x >= wetX {
		return 1
	}
	rh, _, _ := drying.Malt{Shift: p.SorptionOffset}.HumidityUnchecked(x, t)
	return rh
}
