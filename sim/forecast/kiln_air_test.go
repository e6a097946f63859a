package forecast

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// By hand, of a dryer of 600 W that reaches 70 °C in a room of 14 °C, 60 % humid: fresh air holds 6.0 g/kg of water and
// takes (1.006 + 0.006·1.86)·56 = 57.0 kJ/kg, so 10.5 g/s of it are warmed; at 70 °C that is 0.98 m³/kg, 37 m³/h. Of
// air of which 70 % goes round a fan moves 1/0.3 times as much: to 200 °C it takes 189 kJ/kg, 3.2 g/s of 1.35 m³/kg, 51.5 m³/h in all.
func TestAirThatAKilnDoesNotSayIsNoMoreThanItsHeaterWarms(t *testing.T) {
	for _, c := range []struct {
		kiln   string
		flow   float64 // m³/h
		warmed bool
	}{
		{"heater 600 W; reaches 30 to 70 °C", 37, true},
		{"heater 600 W; reaches 30 to 70 °C; returns 70 %", 123, false}, // more than is usual for so much malt
		{"heater 600 W; returns 70 %; reaches 30 to 200 °C", 51.5, true},
		{"heater 1 kW at 60 %; reaches 30 to 70 °C", 37, true},
		{"heater 5 kW; reaches 30 to 70 °C", 0, false},
		{"heater 600 W", 0, false},
		{"reaches 30 to 70 °C", 0, false},
	} {
		f, err := Run(load(t, fmt.Sprintf(`grain "green" { species barley; already green malt; moisture 44 %% }
site "room" { air 14 °C; humidity 60 %%; altitude 0 m }
kiln "dryer" { area 0.5 m2; %s }
process "p" { make pale malt; from 8 kg of "green"; at "room"; kiln in "dryer" { dry at air-on 60 °C for 4 h; cool to malt 30 °C } }
`, c.kiln)), Options{})
		require.NoError(t, err)
		var air KilnAir
		for _, a := range f.Assumed {
			if a, ok := a.(KilnAir); ok {
				air = a
			}
		}
		require.NotZero(t, air.Flow, c.kiln)
		assert.Equal(t, c.warmed, air.Warmed != nil, c.kiln)
		if c.warmed {
			assert.InEpsilon(t, c.flow, 3600*air.Flow, 0.02, c.kiln)
			assert.Empty(t, Troubles[KilnShort](f), "what it reaches it comes to: %s", c.kiln)
		} else {
			assert.InEpsilon(t, 8*airPerKg, air.Flow, 1e-9, c.kiln)
		}
	}
}

// A chimney of 7 m draws some 3500 m³/h through 25 cm of malt, and 40 kW warm 1500 of them to 82 °C: whoever stands at
// the kiln shuts its flaps, and what the house says that it reaches is reached.
func TestFlapsAreShutAsFarAsTheHeatWants(t *testing.T) {
	f := func(facts string) *Forecast {
		f, err := Run(load(t, fmt.Sprintf(`grain "green" { species barley; already green malt; moisture 44 %% }
site "room" { air 14 °C; humidity 60 %%; altitude 0 m }
kiln "tall" { area 6 m2; draught natural; chimney 7 m; fired wood by indirect; %s }
process "p" { make pale malt; from 200 kg of "green"; at "room"; kiln in "tall" {
 dry at air-on 45 °C until moisture at most 10 %% allow 0 to 90 h; cure at air-on 82 °C for 5 h; cool to malt 30 °C } }
`, facts)), Options{})
		require.NoError(t, err)
		return f
	}
	shut := func(f *Forecast) bool {
		for _, a := range f.Assumed {
			if _, ok := a.(KilnFlaps); ok {
				return true
			}
		}
		return false
	}
	said := f("heater 40 kW; reaches 20 to 95 °C")
	assert.True(t, shut(said))
	assert.Empty(t, Troubles[KilnShort](said))
	assert.InDelta(t, 82, said.Stages[0].Steps[1].Warmest.Air, 0.5)
	walled := f("heater 60 kW at 50 %; walls brick 40 m2; reaches 20 to 95 °C")
	assert.True(t, shut(walled))
	assert.Empty(t, Troubles[KilnShort](walled), "what walls take goes through no flap")
	assert.NotEmpty(t, Troubles[KilnShort](f("heater 40 kW")), "of a kiln that does not say what it reaches nobody knows")
	assert.False(t, shut(f("heater 400 kW; reaches 20 to 95 °C")))
	assert.False(t, shut(f("airflow 3000 m3/h; heater 40 kW; reaches 20 to 95 °C")))
}
