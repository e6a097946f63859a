package germinate

import (
	"math"

	"maltwright/sim/grain"
)

// Modified Henderson equation for barley, published [asabe-d245].
const (
	hendersonK = 2.2919e-5
	hendersonC = 195.267 // °C
	hendersonN = 2.0123

	// wetX, kg/kg: from here the equation is within 1e-5 of one at any
	// temperature of a bed, and the surface is taken as wet.
	wetX = 0.5
	// steepestActivity is more than the activity ever rises for each kg/kg.
	steepestActivity = 6.0
)

// waterActivity gives the relative humidity in balance with the face of the bed, 0
// to 1: 1 − exp[−2.2919e-5·(t + 195.267)·M^2.0123], M the moisture in per cent
// dry basis less the profile's sorption offset, t in °C. Fitted to grain up to some 20 % wet
// basis; above 25 % it is within 0.004 of one, as a wet surface has it.
func waterActivity(x, t float64, p *grain.Profile) float64 {
	x -= p.SorptionOffset
	switch {
	case x >= wetX:
		return 1
	case !(x > 0):
		return 0
	}
	return -math.Expm1(-hendersonK * (t + hendersonC) * math.Exp(hendersonN*math.Log(100*x)))
}
