package evidence_test

import (
	"context"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/infer/evidence"
)

// A lot that takes up water faster than is usual is no slip: its weights go together. One
// weight alone that is as far off is.
func TestLinearisedALotIsToldFromASlip(t *testing.T) {
	look := func(first, second, third string) []float64 {
		g, err := trial(t, written(t, "  weighed "+first+" at 14:00 after soak 1\n  weighed "+second+" at 2026-03-07 06:00 after soak 2\n  weighed "+third+" at 22:00 after soak 3\n"), time.Time{}).Linearise(context.Background())
		require.NoError(t, err)
		return g.Residuals
	}
	for i, off := range look("7.65 kg", "8.80 kg", "9.42 kg") {
		assert.Less(t, math.Abs(off), 3.0, "reading %d of a fast lot", i+1)
	}
	off := look("7.38 kg", "9.85 kg", "9.15 kg")
	assert.Greater(t, off[1], 5.0)
	assert.Less(t, math.Abs(off[0]), 3.0)
	assert.Less(t, math.Abs(off[2]), 3.0)
}

// Near what is usual the straight lines lead to where the fit goes.
func TestLinearisedResidualsAgreeWithTheFit(t *testing.T) {
	x := trial(t, written(t, "  weighed 7.38 kg at 14:00 after soak 1\n  weighed 8.66 kg at 2026-03-07 06:00 after soak 2\n  weighed 9.20 kg at 22:00 after soak 3\n  read bed 17.0 °C at 2026-03-08 06:20\n  counted chit 86 of 100 at 07:00\n"), time.Time{})
	g, err := x.Linearise(context.Background())
	require.NoError(t, err)
	e, err := evidence.Fit(context.Background(), x, 0)
	require.NoError(t, err)
	fitted, err := x.At(e.Z)
	require.NoError(t, err)
	for i := range fitted {
		assert.InDelta(t, fitted[i], g.Residuals[i], 0.5, "reading %d", i+1)
	}
}

func TestNothingLinearisedIsEmpty(t *testing.T) {
	g, err := trial(t, written(t, ""), time.Time{}).Linearise(context.Background())
	require.NoError(t, err)
	assert.Empty(t, g.Residuals)
	assert.NotNil(t, g.Centre)
}
