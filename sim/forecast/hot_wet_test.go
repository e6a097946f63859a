package forecast

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/kiln"
)

// largeKiln is a batch that makes a tonne of malt, on a bed of 0.75 m, with so much air, m³/h
// for each tonne of malt, dried from green malt of 44 % at air-on t °C.
func largeKiln(t *testing.T, air, on float64) *Forecast {
	t.Helper()
	f, err := Run(load(t, fmt.Sprintf(`grain "green" { species barley; already green malt; moisture 44 %%; germination 98 %% }
site "room" { air 10 to 14 °C; humidity 70 to 80 %% }
kiln "deep" { area 4 m2; airflow %.0f m3/h; reaches 20 to 110 °C; fired gas by indirect }
process "p" {
 make pale malt
 from 1.69 t of "green"
 at "room"
 kiln in "deep" { dry at air-on %.0f °C until moisture at most 12 %% allow 0 to 40 h; cool to malt 30 °C }
}
`, air, on)), Options{})
	require.NoError(t, err)
	return f
}

// Free drying keeps malt near 25 °C, and 60 to 65 °C is how large kilns begin [owens-2001]: 0.75 m of malt under
// 4000 to 5000 m³/h for each tonne of malt. That is how it is done, and no trouble; 75 °C is.
func TestThePublishedStartOfALargeKilnIsNoTrouble(t *testing.T) {
	for _, air := range []float64{4000, 5000} {
		for _, on := range []float64{60, 65} {
			f := largeKiln(t, air, on)
			assert.InDelta(t, 0.75, f.Kilns[0].Depth, 0.1)
			assert.Empty(t, Troubles[HotWet](f), "%.0f m³/h, %.0f °C", air, on)
		}
		hot := Troubles[HotWet](largeKiln(t, air, 75))
		require.NotEmpty(t, hot)
		assert.Greater(t, hot[0].Share, 0.2)
		assert.Greater(t, hot[0].Time, 1800.0)
	}
}

func TestMaltThatIsWetAllThroughIsHotInAllOfIt(t *testing.T) {
	hot := Troubles[HotWet](kilnOf(t, "dry at malt 70 °C for 6 h"))
	require.NotEmpty(t, hot)
	assert.InDelta(t, 1, hot[0].Share, 1e-9)
	assert.False(t, hot[0].ByAir)
}

// The share by hand, of ten layers: times in straight lines between their middles.
func TestShareOfTheBedThatIsTooHotForLong(t *testing.T) {
	for _, c := range []struct {
		minutes     []float64
		share, mean float64
	}{
		{[]float64{60, 0, 0, 0, 0, 0, 0, 0, 0, 0}, 0.1, 60},            // half of the first, and half of the way on
		{[]float64{60, 60, 0, 0, 0, 0, 0, 0, 0, 0}, 0.2, 60},           //
		{[]float64{90, 30, 0, 0, 0, 0, 0, 0, 0, 0}, 0.15, 60},          // to the middle of the second
		{[]float64{29, 29, 29, 29, 29, 29, 29, 29, 29, 29}, 0, 0},      // nowhere long
		{[]float64{40, 40, 40, 40, 40, 40, 40, 40, 40, 40}, 1, 40},     //
		{[]float64{20, 40, 0, 0, 0, 0, 0, 0, 0, 20}, 0.05 + 0.025, 40}, // half of the way to it, a quarter away
	} {
		h := hotWet{}
		for _, m := range c.minutes {
			h.times = append(h.times, 60*m)
		}
		share, mean := h.long()
		assert.InDelta(t, c.share, share, 1e-9, "%v", c.minutes)
		assert.InDelta(t, 60*c.mean, mean, 1e-9, "%v", c.minutes)
	}
}

func TestALayerIsHotByTheLimitOfItsMoisture(t *testing.T) {
	var h hotWet
	h.begin(4)
	h.stepped([]kiln.Layer{{X: 0.30 / 0.70, T: 51}, {X: 0.20 / 0.80, T: 64}, {X: 0.20 / 0.80, T: 66}, {X: 0.05 / 0.95, T: 90}}, 600)
	assert.Equal(t, []float64{600, 0, 600, 0}, h.times)
	h.mix()
	assert.Equal(t, []float64{300, 300, 300, 300}, h.times)
}
