package chart_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"maltwright/cmd/chart"
)

func TestLabelsKeepClearOfOneAnotherAndNearWhatTheyName(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.SliceOfN(rapid.Float64Range(-50, 350), 0, 15).Draw(t, "want")
		at := chart.Spread(want, 16, 0, 300)
		order := make([]int, len(want))
		for i := range order {
			order[i] = i
		}
		slices.SortFunc(order, func(a, b int) int { return int(math.Copysign(1, at[a]-at[b])) })
		for k, i := range order {
			assert.True(t, at[i] >= 8-1e-9 && at[i] <= 292+1e-9, "label %d at %g", i, at[i])
			if k > 0 {
				assert.GreaterOrEqual(t, at[i]-at[order[k-1]], 16-1e-9)
				assert.GreaterOrEqual(t, want[i], want[order[k-1]], "they keep their order")
			}
		}
		assert.Len(t, at, len(want))
	})
}

func TestLabelsThatHaveRoomStandWhereTheyWantTo(t *testing.T) {
	assert.Equal(t, []float64{100, 20, 60}, chart.Spread([]float64{100, 20, 60}, 16, 0, 300))
}

func TestLabelsThatWantOnePlaceStandAroundIt(t *testing.T) {
	assert.Equal(t, []float64{84, 100, 116}, chart.Spread([]float64{100, 100, 100}, 16, 0, 300))
	assert.Equal(t, []float64{8, 24, 40}, chart.Spread([]float64{0, 0, 0}, 16, 0, 300), "at the end of the frame")
}

func TestLabelsWithoutRoomStandCloser(t *testing.T) {
	assert.Equal(t, []float64{5, 15, 25, 35}, chart.Spread([]float64{0, 0, 50, 50}, 16, 0, 40))
	assert.Empty(t, chart.Spread(nil, 16, 0, 40))
}

// No other places that keep clear move the labels less: the places are compared with many drawn at random.
func TestLabelsAreMovedAsLittleAsCanBe(t *testing.T) {
	far := func(want, at []float64) (sum float64) {
		for i := range want {
			sum += (want[i] - at[i]) * (want[i] - at[i])
		}
		return sum
	}
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.SliceOfN(rapid.Float64Range(0, 200), 2, 6).Draw(t, "want")
		slices.Sort(want)
		best := far(want, chart.Spread(want, 16, 0, 200))
		other, low := make([]float64, len(want)), 8.0
		for i := range want {
			low = rapid.Float64Range(low, 192-16*float64(len(want)-1-i)).Draw(t, "other")
			other[i] = low
			low += 16
		}
		assert.LessOrEqual(t, best, far(want, other)+1e-6)
	})
}
