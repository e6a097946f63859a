package chart_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"maltwright/cmd/chart"
)

func TestTicksAreStepsThatPeopleCountBy(t *testing.T) {
	for _, c := range []struct {
		low, high    float64
		most, places int
		labels       []string
	}{
		{3.7, 44.9, 6, 1, []string{"0", "10", "20", "30", "40", "50"}},
		{57, 182, 8, 0, []string{"50", "100", "150", "200"}},
		{5.91, 6.06, 5, 2, []string{"5.90", "5.95", "6.00", "6.05", "6.10"}},
		{0, 100, 6, 0, []string{"0", "20", "40", "60", "80", "100"}},
		{12, 12, 5, 1, []string{"11.9", "12.0", "12.1"}},
		{-8, 3, 5, 0, []string{"-10", "-5", "0", "5"}},
		{math.Inf(1), math.Inf(-1), 5, 0, []string{"0", "1"}},
		{1e-4, 3e-4, 5, 1, []string{"0.0", "0.1"}},
	} {
		var labels []string
		ticks := chart.NiceTicks(c.low, c.high, c.most, c.places)
		for i := range ticks.At {
			labels = append(labels, ticks.Label(i))
		}
		assert.Equal(t, c.labels, labels, "%g to %g", c.low, c.high)
	}
}

func TestTicksEncloseWhatWasAskedAndSayWhatTheyAre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-1e5, 1e5).Draw(t, "low")
		high := low + rapid.OneOf(rapid.Float64Range(0, 1e5), rapid.Float64Range(0, 1)).Draw(t, "length")
		most := rapid.IntRange(2, 12).Draw(t, "most")
		ticks := chart.NiceTicks(low, high, most, rapid.IntRange(0, 3).Draw(t, "places"))
		assert.GreaterOrEqual(t, len(ticks.At), 2)
		assert.LessOrEqual(t, len(ticks.At), most)
		step := ticks.At[1] - ticks.At[0]
		assert.LessOrEqual(t, ticks.Low(), low+1e-6*step)
		assert.GreaterOrEqual(t, ticks.High(), high-1e-6*step)
		for i, v := range ticks.At {
			label, err := strconv.ParseFloat(ticks.Label(i), 64)
			assert.NoError(t, err)
			assert.InDelta(t, v, label, 1e-6*step)
			if i > 0 {
				assert.InDelta(t, step, v-ticks.At[i-1], 1e-6*step)
			}
		}
	})
}
