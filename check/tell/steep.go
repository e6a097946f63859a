package tell

import (
	"fmt"

	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

func mixedWater(a forecast.MixedWater, units quantity.System) Assumed {
	return Assumed{"grain before its first soak", units.Degrees(a.Grain, 1), "as warm as the room; grain and measured water come to one temperature, and the vessel is left out"}
}

func sprayed(forecast.Sprayed, quantity.System) Assumed {
	return Assumed{"spray in the rests", "what keeps the kernels wet", "the rest does not say how much; so little water neither cools nor warms"}
}

func notCovered(t forecast.NotCovered, _ quantity.System) string {
	return fmt.Sprintf("soak %d has %s of water, and %s is needed to cover the grain", t.Soak, t.Water, t.Water.Like(inWater(t.Water.Quantity, t.Need)))
}

// inWater is a volume of water, m³, in the dimension in which water is written.
func inWater(written quantity.Quantity, m3 float64) float64 {
	if written.Dimension == quantity.Mass {
		return 1000 * m3
	}
	return m3
}

func airBlown(t forecast.AirBlown, _ quantity.System) string {
	return fmt.Sprintf("%s of air are blown through the water", t.Flow)
}

func airDrawn(t forecast.AirDrawn, _ quantity.System) string {
	return fmt.Sprintf("%s of air are drawn through the grain, and %s %% of that becomes carbon dioxide", t.Flow, quantity.Fixed(100*t.CO2, 1))
}
