package follow

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

// While grain is steeped it is the lot that leaves the moisture at cast open, and the first
// weight is what tells of it. What has nothing to do with that is not told of.
func TestWhatDrivesTheMoistureAtCastIsTheLot(t *testing.T) {
	steepOut := func(t *forecast.Totals) float64 { return t.SteepOutMoisture }
	b := load(t, `use "pale.malt"
batch "x" of "Loft pale" {
  began 2026-03-06 07:00
  weighed 7.38 kg at 14:00 after soak 1
  weighed 8.58 kg at 2026-03-07 06:00 after soak 2
}
`)
	open := map[ensemble.Open]bool{ensemble.LotUptake: true, ensemble.LotHuskWater: true, ensemble.LateUptake: true,
		ensemble.RawMoisture: true, ensemble.PlaceInBands: true, ensemble.DrawnWater: true, ensemble.RoomAir: true}
	width := 1.0
	for _, hours := range []float64{1, 8, 24} {
		f, err := Of(context.Background(), b, began.Add(time.Duration(hours*float64(time.Hour))), Options{Members: 200})
		require.NoError(t, err)
		s, list := f.Ensemble.Total(steepOut), f.Drivers(steepOut)
		t.Logf("after %g h: %.2f to %.2f %%, %d drivers", hours, 100*s.P10, 100*s.P90, len(list))
		for _, d := range list {
			assert.True(t, open[d.Unknown.Open], "%v drives it by %.2f after %g h", d.Unknown.Open, d.Share, hours)
		}
		if hours == 1 {
			require.NotEmpty(t, list)
			assert.Equal(t, ensemble.LotUptake, list[0].Unknown.Open)
			assert.True(t, list[0].Rises)
		}
		assert.Less(t, s.P90-s.P10, 0.8*width, "after %g h", hours)
		width = s.P90 - s.P10
	}
}
