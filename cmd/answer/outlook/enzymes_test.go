package outlook_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/sample"
	"maltwright/sim/forecast"
)

func TestWhatEnzymesSufficeForFollowsFromWhatIsKept(t *testing.T) {
	f := sample.Forecast(t, "pale.malt")
	for kept, want := range map[float64]outlook.Suffice{0.65: outlook.ForUnmalted, 0.60: outlook.ForUnmalted, 0.5: outlook.ForItself, 0.3: outlook.CannotSay, 0.1: outlook.NotEnough} {
		e := outlook.EnzymesOf(f, kept)
		require.NotNil(t, e)
		assert.Equal(t, want, e.Enough, "%g kept", kept)
		assert.Equal(t, want == outlook.ForUnmalted, e.Unmalted != nil)
		require.NotNil(t, e.Gentle)
		assert.True(t, *e.Gentle)
	}
}

func TestOfGrainAndGrowthThatMayHaveTooFewItCannotBeSaid(t *testing.T) {
	oats := outlook.EnzymesOf(sample.Forecast(t, "oats.malt"), 0.8)
	assert.Equal(t, [2]any{outlook.CannotSay, outlook.LackGrain}, [2]any{oats.Enough, oats.Why})
	f := *sample.Forecast(t, "pale.malt")
	f.Totals.Quality.Modified = 0.3
	green := outlook.EnzymesOf(&f, 0.8)
	assert.Equal(t, [2]any{outlook.CannotSay, outlook.LackGrowth}, [2]any{green.Enough, green.Why})
}

// Crystal malt is stewed hot on purpose, and nobody asks whether it was dried gently.
func TestMaltThatGetsHotWhileItIsWetWasNotDriedGently(t *testing.T) {
	crystal := outlook.EnzymesOf(sample.Forecast(t, "crystal.malt"), 0)
	assert.Equal(t, outlook.NotEnough, crystal.Enough)
	assert.Nil(t, crystal.Gentle)
	f := *sample.Forecast(t, "pale.malt")
	f.Trouble = append(f.Trouble, forecast.HotWet{Temperature: 70, Moisture: 0.4, Limit: 50}, forecast.HotWet{Temperature: 52, Moisture: 0.3, Limit: 50, ByAir: true})
	hot := outlook.EnzymesOf(&f, 0.65)
	require.NotNil(t, hot.Hottest)
	assert.False(t, *hot.Gentle)
	assert.InDelta(t, 70, float64(hot.Hottest.Temperature), 1e-9)
}

// A mash needs 35 °Lintner, 106.5 °WK: malt of 250 °WK has that where 57 % of it is unmalted, of
// which half is told; of 142 °WK a quarter may be.
func TestAMeasuredPowerGoesBeforeTheForecast(t *testing.T) {
	for power, want := range map[float64]float64{250: 0.5, 142.1: 0.25, 108: 0, 90: -1} {
		e := outlook.EnzymesOf(sample.Forecast(t, "pale.malt"), 0.65)
		e.Measured(answer.DiastaticPower(power))
		assert.Equal(t, outlook.ByMeasure, e.Standing)
		switch {
		case want < 0:
			assert.Equal(t, outlook.NotEnough, e.Enough)
		case want == 0:
			assert.Equal(t, outlook.ForItself, e.Enough)
		default:
			require.NotNil(t, e.Unmalted)
			assert.InDelta(t, want, float64(*e.Unmalted), 1e-9)
		}
	}
}
