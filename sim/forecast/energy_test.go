package forecast

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

const fiveDays = "air at air-on 13 °C with airflow 500 m3/h; humidity air-on 98 %; turn every 12 h; for 5 days"

// Independent calculation, per tonne, cast at 45 %, turned every 12 h, 500 m³/h at 13 °C and 98 %,
// ± 10 %: the heat of five days, its peak, the water that carries it off, and its share.
func TestTheHeatOfABoxIsWhatAnIndependentCalculationHas(t *testing.T) {
	f := grownIn(t, boxed(t, anyAir, fiveDays), cast(t, 0.45), nil)
	h := f.Pieces[0].Heat
	assert.InEpsilon(t, 693e6, h.Made, 0.1)
	assert.InEpsilon(t, 2160, h.Peak, 0.1)
	assert.InEpsilon(t, 181, h.Dried, 0.1)
	assert.InEpsilon(t, 0.65, h.Latent/h.Made, 0.1)
	assert.Greater(t, h.PeakAt, 1*day)
	assert.Less(t, h.PeakAt, 4*day)
	assert.Zero(t, h.Cooled, "the cooler of a box takes it from the air")
	assert.Positive(t, f.Pieces[0].Blown.PeakCold)
}

// What is made and given leaves, or stays in the bed: to rounding, though each is added up apart.
func TestTheHeatOfGrowthLeavesOrStays(t *testing.T) {
	for name, p := range map[string]*Forecast{
		"box":                grownIn(t, boxed(t, anyAir, fiveDays), cast(t, 0.45), nil),
		"box that stands":    grownIn(t, boxed(t, "2.19 m2; airflow 700 m3/h", "air at air-on 13 °C for 60 min every 4 h; turn every 12 h; sprinkle 20 l/t every 24 h; for 3 days"), cast(t, 0.42), nil),
		"floor":              grownIn(t, boxed(t, "14 m2", "hold bed at 14 to 18 °C; turn every 8 h; for 5 days"), cast(t, 0.45), nil),
		"floor with cooler":  grownIn(t, boxed(t, "5 m2; cooler 2 kW", "hold bed at 14 to 16 °C; turn every 8 h; for 5 days"), cast(t, 0.45), nil),
		"floor with heater":  grownIn(t, boxed(t, "30 m2; heater 3 kW", "hold bed at 19 to 20 °C; turn every 8 h; for 5 days"), cast(t, 0.45), nil),
		"floor and sprinkle": grownIn(t, boxed(t, "14 m2", "hold bed at 14 to 18 °C; turn every 8 h; sprinkle 30 l/t every 24 h; for 4 days"), cast(t, 0.42), nil),
	} {
		h := p.Pieces[0].Heat
		assert.Positive(t, h.Made, name)
		assert.Equal(t, strings.Contains(name, "heater") || strings.Contains(name, "sprinkle") || strings.Contains(name, "stands"), h.Given > 0, name)
		assert.Equal(t, strings.Contains(name, "cooler"), h.Cooled > 0, name)
		assert.InDelta(t, h.Made+h.Given, h.Latent+h.Sensible+h.Cooled+h.Kept, 1e-6*h.Made, name)
	}
}

// A heater of a floor and one of a box take what they give over their efficiency, and are as weak as
// that makes them; the fan of a box draws what it is said to while it blows.
func TestHeatersAndFansOfBedsAreCounted(t *testing.T) {
	spent := func(floor, growing string) Energy {
		return grownIn(t, boxed(t, floor, growing), cast(t, 0.45), nil).Spent[0].Energy
	}
	const warm = "hold bed at 19 to 20 °C; turn every 8 h; for 2 days"
	whole, half := spent("30 m2; heater 300 W", warm), spent("30 m2; heater 600 W at 50 %", warm)
	assert.Positive(t, whole.Heat)
	assert.InEpsilon(t, whole.Heat, half.Heat, 1e-9)
	assert.InEpsilon(t, 2*half.Heat, half.Fuel, 1e-9)
	assert.Equal(t, half.Fuel, half.Unsaid, "nobody says how a floor is heated")
	assert.Zero(t, half.Power)

	const blown = "air at air-on 17 °C; humidity air-on 98 %; turn every 12 h; for 2 days"
	box := spent("2.19 m2; airflow 700 m3/h; heater 20 kW at 80 %; cooler 10 kW; fan 250 W", blown)
	assert.InEpsilon(t, box.Heat/0.8, box.Fuel, 1e-9)
	assert.InEpsilon(t, 250*48*hour, box.Fans, 1e-6)
	assert.Equal(t, box.Fans, box.Power)
}
