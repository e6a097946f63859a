package noted_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/words"
)

// Grain that comes out of its last soak clearly drier than the steep waits for is told of, with what can be done; in the
// middle of the steep, or where it is moist enough, it is not.
func TestGrainThatComesOutOfTheSteepTooDryIsToldOf(t *testing.T) {
	const before = "  weighed 7.38 kg at 14:00 after soak 1\n"
	r := last(t, before+"  weighed 8.55 kg at 2026-03-07 22:00 after soak 3\n", "2026-03-07 22:00")
	require.NotNil(t, r.Short)
	assert.InDelta(t, 0.43, float64(r.Short.Least), 1e-9)
	assert.Contains(t, words.House{}.Reading(r), "is under what the steep waits for, moisture at least 43 %: soak once more, or go on")
	for _, line := range []string{"weighed 9.30 kg at 2026-03-07 22:00 after soak 3", "weighed 8.30 kg at 2026-03-07 06:00 after soak 2"} {
		assert.Nil(t, last(t, before+"  "+line+"\n", "2026-03-07 22:00").Short, line)
	}
}

// Five points of moisture beside the forecast are told of as that.
func TestAMoistureFarFromItsForecastIsToldOf(t *testing.T) {
	r := last(t, "  weighed 7.95 kg at 14:00 after soak 1\n", "2026-03-06 14:00")
	require.NotNil(t, r.Apart)
	assert.InDelta(t, float64(r.Moisture.Read-*r.Moisture.Forecast), float64(*r.Apart), 1e-12)
	assert.Nil(t, last(t, "  weighed 7.45 kg at 14:00 after soak 1\n", "2026-03-06 14:00").Apart)
}
