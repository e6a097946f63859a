package seasons

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/sim/forecast"
)

// What the batch took is told for each kg that was weighed, not that was foretold; a little of one
// beside the other is left out.
func TestEnergyIsOfTheMaltThatWasWeighed(t *testing.T) {
	made := func(fuel, power float64, malt Figure) (f, p Figure) {
		r := &record{f: &forecast.Forecast{Totals: forecast.Totals{Malt: 6, Energy: forecast.Energy{Fuel: fuel, Power: power}}}}
		s := Season{Malt: malt}
		r.energy(&s)
		return s.Fuel, s.Power
	}
	weighed := Figure{5, Measured}
	fuel, power := made(100, 40, weighed)
	assert.Equal(t, Figure{20, Reckoned}, fuel)
	assert.Equal(t, Figure{8, Reckoned}, power)
	fuel, power = made(1, 100, weighed)
	assert.Equal(t, Missing, fuel.Standing)
	assert.Equal(t, Reckoned, power.Standing)
	fuel, power = made(0, 0, weighed)
	assert.Equal(t, Missing, fuel.Standing)
	assert.Equal(t, Missing, power.Standing)
	_, power = made(100, 40, Figure{5, Impossible})
	assert.Equal(t, Missing, power.Standing)
}
