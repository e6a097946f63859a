package evidence_test

import (
	"context"
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/infer/evidence"
)

// lessons are what a record tells of each factor: its value, and the share of its variance
// that is left.
type lessons struct{ value, left map[ensemble.Factor]float64 }

func told(t testing.TB, b *model.Batch) lessons {
	t.Helper()
	x := trial(t, b, time.Time{})
	e, err := evidence.Fit(context.Background(), x, 0)
	require.NoError(t, err)
	l := lessons{map[ensemble.Factor]float64{}, map[ensemble.Factor]float64{}}
	for i, a := range x.Axes {
		if a.Factor != "" {
			l.value[a.Factor], l.left[a.Factor] = a.Value(e.Z[i]), e.Cov.At(i, i)
		}
	}
	return l
}

// A batch that chits late has a lot that chits late, for the most part; how fast it grows
// on is another matter.
func TestACountOfChitsTellsOfChitAndHardlyOfGrowth(t *testing.T) {
	usual, before := told(t, written(t, "  counted chit 85 of 100 at 2026-03-08 06:00\n")), math.Inf(1)
	for _, n := range []int{85, 75, 60} {
		l := told(t, written(t, fmt.Sprintf("  counted chit %d of 100 at 2026-03-08 06:00\n", n)))
		t.Logf("%d of 100: chit %.3f, growth %.3f", n, l.value[ensemble.Chit], l.value[ensemble.Growth])
		assert.Less(t, l.value[ensemble.Chit], before)
		assert.Less(t, l.left[ensemble.Chit], 0.6)
		assert.Greater(t, l.left[ensemble.Growth], 0.85)
		chit := math.Log(l.value[ensemble.Chit] / usual.value[ensemble.Chit])
		growth := math.Log(l.value[ensemble.Growth] / usual.value[ensemble.Growth])
		assert.LessOrEqual(t, math.Abs(growth), 0.2*math.Abs(chit))
		before = l.value[ensemble.Chit]
	}
}

func TestAcrospiresTellOfGrowthAndHardlyOfChit(t *testing.T) {
	short := told(t, written(t, "  counted acrospire 2 28 50 18 2 0 at 2026-03-11 08:00\n"))
	long := told(t, written(t, "  counted acrospire 2 8 24 48 18 0 at 2026-03-11 08:00\n"))
	t.Logf("short: %.3v, long: %.3v", short.value, long.value)
	assert.Greater(t, long.value[ensemble.Growth], short.value[ensemble.Growth]*1.1)
	assert.Less(t, short.left[ensemble.Growth], 0.6)
	assert.Greater(t, short.left[ensemble.Chit], 0.9)
	// Of what either is taken to vary by: a lot that chits late is some hours behind for good.
	growth := math.Log(long.value[ensemble.Growth]/short.value[ensemble.Growth]) / 0.12
	chit := math.Log(long.value[ensemble.Chit]/short.value[ensemble.Chit]) / 0.5
	assert.Less(t, math.Abs(chit), 0.35*growth)
}

// One weight tells what uptake and husk come to; a second one how it goes on.
func TestASecondWeighingSettlesTheMoistureAtCast(t *testing.T) {
	const first, second = "  weighed 7.38 kg at 14:00 after soak 1\n", "  weighed 8.58 kg at 2026-03-07 06:00 after soak 2\n"
	never := openAtCast(t, written(t, "  read room 14 °C at 2026-03-20 08:00\n"))
	one, both := openAtCast(t, written(t, first)), openAtCast(t, written(t, first+second))
	t.Logf("open at cast: %.2f points, after the first %.2f, after both %.2f", 100*never, 100*one, 100*both)
	assert.Less(t, one, 0.6*never)
	assert.Less(t, both, 0.8*one)
}

// openAtCast is the standard deviation of the moisture at cast that a record leaves, wet
// basis, by the slopes at the mode.
func openAtCast(t testing.TB, b *model.Batch) float64 {
	x := trial(t, b, time.Time{})
	e, err := evidence.Fit(context.Background(), x, 0)
	require.NoError(t, err)
	cast := func(z []float64) float64 {
		f, err := x.Run(z, false)
		require.NoError(t, err)
		return f.Totals.SteepOutMoisture
	}
	const stride = 0.25
	slopes, middle := mat.NewVecDense(len(e.Z), nil), cast(e.Z)
	for i := range e.Z {
		z := slices.Clone(e.Z)
		z[i] += stride
		slopes.SetVec(i, (cast(z)-middle)/stride)
	}
	return math.Sqrt(mat.Inner(slopes, e.Cov, slopes))
}
