package outlook_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/sample"
	"maltwright/sim/forecast"
)

// What comes off the kiln wet is told as no malt, and nothing of malt is told of it.
func TestWhatComesOffTheKilnWetIsNoMalt(t *testing.T) {
	f := sample.Forecast(t, "pale.malt")
	dry := outlook.Of(f, time.Time{})
	assert.Nil(t, dry.NoMalt)
	require.NotEmpty(t, dry.Rest)

	f.Totals.FinalMoisture = forecast.WitheredMoisture + 0.1
	wet := outlook.Of(f, time.Time{})
	require.NotNil(t, wet.NoMalt)
	assert.InDelta(t, 0.3, float64(wet.NoMalt.Moisture), 1e-9)
	assert.Empty(t, wet.Rest)
	assert.Nil(t, wet.Indications)
	for _, st := range wet.Stages {
		assert.NotContains(t, []string{"deculm", "store"}, st.Stage)
	}
	assert.Less(t, wet.Totals.Total, dry.Totals.Total)
	for name, v := range map[string]float64{"malt": float64(wet.Totals.Malt), "yield": float64(wet.Totals.Yield), "for a tonne": float64(wet.Totals.Energy.PowerPerTonne)} {
		assert.True(t, math.IsNaN(v), name)
	}
	assert.Len(t, wet.Assumed, len(dry.Assumed)-1, "nobody deculms it")
}
