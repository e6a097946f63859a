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
