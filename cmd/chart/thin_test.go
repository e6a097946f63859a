package chart

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestOfALongLineNoMoreIsLeftThanCanBeSeenAndItsEndsAndPeaksAre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 4000).Draw(t, "points")
		wave := rapid.Float64Range(0.1, 3).Draw(t, "wave")
		points := make([]XY, n)
		for i := range points {
			points[i] = XY{600 * float64(i) / float64(n-1), 100 + 80*math.Sin(wave*float64(i)) + 10*math.Cos(float64(i*i))}
		}
		kept := thinned(slices.Clone(points))
		assert.LessOrEqual(t, len(kept), 2*602+2)
		assert.Equal(t, points[0], kept[0])
		assert.Equal(t, points[n-1], kept[len(kept)-1])
		y := func(a, b XY) int { return int(math.Copysign(1, a.Y-b.Y)) }
		assert.InDelta(t, slices.MaxFunc(points, y).Y, slices.MaxFunc(kept, y).Y, 0.1)
		assert.InDelta(t, slices.MinFunc(points, y).Y, slices.MinFunc(kept, y).Y, 0.1)
		assert.True(t, slices.IsSortedFunc(kept, func(a, b XY) int { return int(math.Copysign(1, a.X-b.X)) }) || n < 3)
	})
}

func TestAStraightLineIsTwoPointsAndASpikeStays(t *testing.T) {
	var points []XY
	for i := range 50 {
		points = append(points, XY{float64(i), 2 * float64(i)})
	}
	assert.Equal(t, []XY{{0, 0}, {49, 98}}, thinned(slices.Clone(points)))
	points[20].Y = 400
	assert.Contains(t, thinned(points), XY{20, 400})
}

func TestALineThatGoesBackOnItselfKeepsItsTurn(t *testing.T) {
	points := []XY{{0, 0}, {10, 0}, {10, 50}, {10, 20}, {20, 20}}
	assert.Equal(t, points, thinned(slices.Clone(points)))
}
