package evidence_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/infer/evidence"
)

// struckOf is what of a record is no evidence beside the usual forecast.
func struckOf(t *testing.T, lines string) (struck []string, all int) {
	t.Helper()
	trial, err := evidence.New(written(t, lines), time.Time{})
	require.NoError(t, err)
	require.NoError(t, trial.Affordable())
	for _, x := range trial.Struck() {
		struck = append(struck, x.Place().Text())
	}
	return struck, len(trial.Observations)
}

func TestAWeightThatCannotBeIsNoEvidence(t *testing.T) {
	const good = "  weighed 7.41 kg at 2026-03-06 14:00 after soak 1\n  weighed 5.15 kg at 2026-03-13 16:15 after cure\n"
	struck, all := struckOf(t, good+"  weighed 4.98 kg clean malt at 18:09\n")
	assert.Empty(t, struck)
	assert.Equal(t, 3, all)
	for weight, why := range map[string]string{"3.98": "below its dry matter", "6.2": "more than the grain"} {
		struck, _ := struckOf(t, good+"  weighed "+weight+" kg clean malt at 18:09\n")
		assert.Equal(t, []string{"weighed " + weight + " kg clean malt at 18:09"}, struck, why)
	}
	struck, _ = struckOf(t, "  weighed 14.2 kg at 2026-03-06 14:00 after soak 1\n")
	assert.Len(t, struck, 1, "6 kg of 12.4 % would hold 63 % of water")
}

func TestWhatIsStruckPullsNothing(t *testing.T) {
	const good = "  weighed 7.41 kg at 2026-03-06 14:00 after soak 1\n  weighed 8.66 kg at 2026-03-07 06:00 after soak 2\n"
	with, err := evidence.New(written(t, good+"  weighed 6.2 kg clean malt at 2026-03-13 18:09\n"), time.Time{})
	require.NoError(t, err)
	zero := make([]float64, len(with.Axes))
	f, err := with.Run(zero, false)
	require.NoError(t, err)
	r := with.Residuals(f, zero)
	assert.NotZero(t, r[0])
	assert.Zero(t, r[2])
}
