package noted_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/noted"
	"maltwright/cmd/answer/sample"
	"maltwright/lang/model"
	"maltwright/sim/work"
)

func late(t *testing.T, line, now string) *noted.Late {
	t.Helper()
	b := sample.Batch(t, "batches", fmt.Sprintf(opened, "  "+line+"\n"))
	return noted.LateOf(t.Context(), b, b.Readings[0].(*model.Weighed), clock(t, now), work.NewPool(work.Records))
}

// A weight that is written down days after its soak, and is that of the end of the soak, was taken then.
func TestALateWeightIsOfTheEndOfItsStep(t *testing.T) {
	l := late(t, "weighed 7.38 kg at 2026-03-08 06:39 after soak 1", "2026-03-08 06:40")
	require.NotNil(t, l)
	assert.Equal(t, "soak 1", l.Step)
	assert.Equal(t, clock(t, "2026-03-06 14:00"), l.Ended)
	assert.InDelta(t, 7.38, float64(l.Weight), 0.1)
	for _, line := range []string{
		"weighed 7.38 kg at 2026-03-06 15:00 after soak 1", // near enough
		"weighed 8.38 kg at 2026-03-08 06:39 after soak 1", // not that weight
		"weighed 7.38 kg at 2026-03-08 06:39 after soak 2",
		"weighed 7.38 kg at 2026-03-08 06:39",
	} {
		assert.Nil(t, late(t, line, "2026-03-08 06:40"), line)
	}
}

// Of a bad weight and the good one behind it the bad one is pointed at.
func TestAGoodWeightBehindABadOnePointsAtThat(t *testing.T) {
	r := last(t, "  weighed 8.33 kg at 14:00 after soak 1\n  weighed 8.48 kg at 2026-03-07 06:00 after soak 2\n", "2026-03-07 06:00")
	require.NotNil(t, r.Doubt)
	require.NotNil(t, r.Doubt.Earlier)
	assert.Equal(t, "8.33 kg", r.Doubt.Earlier.Weight.String())
	r = last(t, "  weighed 7.35 kg at 14:00 after soak 1\n  weighed 9.35 kg at 14:30\n", "2026-03-06 14:30")
	require.NotNil(t, r.Doubt)
	assert.Nil(t, r.Doubt.Earlier)
}
