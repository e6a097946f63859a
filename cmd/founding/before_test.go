package founding

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/quantity"
)

func TestWhatIsNotKnownOfALotIsToldBeforeItIsWet(t *testing.T) {
	there := folder(t, "home/porch.malt")
	for _, c := range []struct {
		answers Answers
		want    []string
	}{
		{Answers{"add": AddGrain}, []string{"treated as seed", "mould and ergot", "100 kernels"}},
		{Answers{"add": AddGrain, "treated": "no", "mould": "none"}, []string{"100 kernels"}},
		{Answers{"add": AddGrain, "treated": "no", "germination": "97 of 100"}, []string{"mould and ergot"}},
		{Answers{"add": AddGrain, "treated": "no", "mould": "none", "germination": "97 of 100"}, nil},
		{Answers{"add": AddVessel}, nil},
	} {
		whole, _, ok := Completed(c.answers, there)
		require.True(t, ok)
		r, err := Write(context.Background(), whole, there)
		require.NoError(t, err)
		require.Len(t, r.Before, len(c.want), "%v", c.answers)
		for i, want := range c.want {
			assert.Contains(t, r.Before[i], want)
		}
	}
}

func TestWhatWasSeenOfMouldStandsWithTheLot(t *testing.T) {
	for answer, want := range map[string]string{"none": "none", DontKnow: "unknown"} {
		whole, _, ok := Completed(Answers{"units": Metric, "mould": answer}, There{})
		require.True(t, ok)
		r, err := write(context.Background(), whole, There{}, false)
		require.NoError(t, err)
		lot := r.Report.House.Grains[0]
		assert.Equal(t, want, lot.Mould.Text)
		assert.Equal(t, want, lot.Ergot.Text)
	}
}

// Soaks are planned in the water that the tap gives.
func TestSoaksAreInTheWaterOfTheTap(t *testing.T) {
	for water, band := range map[string][2]float64{"58 to 64 °F": {58, 64}, "48 to 50 °F": {48, 50}, "55 °F": {55, 55}} {
		whole, _, ok := Completed(Answers{"units": Pounds, "treated": "no", "water": water}, There{})
		require.True(t, ok)
		r, err := Write(context.Background(), whole, There{})
		require.NoError(t, err)
		for _, s := range r.Forecast.Stages[0].Steps {
			if s.Label[:4] == "soak" {
				at := quantity.Fahrenheit(s.Temperature.From)
				assert.GreaterOrEqual(t, at, band[0]-0.6, water)
				assert.LessOrEqual(t, at, band[1]+0.6, water)
			}
		}
	}
}
