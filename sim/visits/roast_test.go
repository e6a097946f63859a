package visits

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A roast is visited at its times where its malt is not forecast, and whoever cools it is told of the water.
func TestARoastIsVisitedBeyondTheModel(t *testing.T) {
	list := listed(t, `site "room" { air 18 °C; humidity 60 %; water 12 °C; altitude 0 m }
kiln "roaster" { holds 20 l; tumbles yes; airflow 4 m3/h; heater 2 kW; reaches 60 to 230 °C; fired gas by indirect }
grain "pale" { species barley; already kilned malt; moisture 4.5 % }
process "p" {
 make black malt
 from 4 kg of "pale"
 at "room"
 kiln in "roaster" { roast at malt 215 °C for 40 min; cool to malt 30 °C with water 0.1 l }
 store in "sack" for at least 2 weeks
}
`)
	var kinds []Kind
	for _, task := range list {
		kinds = append(kinds, task.Kind)
		assert.False(t, math.IsNaN(task.At), task.Kind)
		if task.Kind == Cool {
			require.NotNil(t, task.Water)
			assert.Equal(t, "0.1 l", task.Water.String())
			assert.InDelta(t, 2400, task.At, 1e-6)
			assert.True(t, math.IsNaN(task.Weight))
		}
	}
	assert.Equal(t, []Kind{Load, Cool, Unload, Put, Rested}, kinds)
}
