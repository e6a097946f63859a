package words

import (
	"math"

	"maltwright/cmd/answer"
	"maltwright/lang/quantity"
)

// byTheTonne is the malt of a batch, kg, from which on its energy is told for each tonne.
const byTheTonne = 200.0

// EnergyEach is the scale on which the energy of a batch of so much malt is told, of J for each
// kg: kWh/t, kWh/kg or kWh/lb.
func (h House) EnergyEach(malt answer.Kilograms) Scale {
	of := func(kg float64) func(float64) float64 {
		return func(each float64) float64 {
			k := each * kg / quantity.KilowattHour
			if k >= 1000 { // nobody knows a kiln so well that the last figure meant something
				k = 10 * math.Round(k/10)
			}
			return k
		}
	}
	switch {
	case h.British:
		return Scale{Unit: "kWh/lb", of: of(quantity.Pound), places: twoFigures}
	case malt >= byTheTonne:
		return Scale{Unit: "kWh/t", of: of(1000), places: twoFigures}
	}
	return Scale{Unit: "kWh/kg", of: of(1), places: twoFigures}
}

// PowerEach writes W for each tonne: 2.2 kW/t, 1.0 W/lb.
func (h House) PowerEach(perTonne answer.Watts) string {
	if h.British {
		return Power(float64(perTonne)/1000*quantity.Pound) + "/lb"
	}
	return Power(perTonne) + "/t"
}

// Power writes W: 45 W, 1.8 kW, 110 kW.
func Power[T ~float64](w T) string {
	switch p := float64(w); {
	case !known(p):
		return None
	case p < 995:
		return quantity.Fixed(p, twoFigures(p)) + " W"
	default:
		return quantity.Fixed(p/1000, twoFigures(p/1000)) + " kW"
	}
}

// twoFigures are how many stand behind the point, so that there are two in all.
func twoFigures(shown float64) int {
	switch {
	case shown < 0.095:
		return 3
	case shown < 0.95:
		return 2
	case shown < 9.5:
		return 1
	}
	return 0
}
