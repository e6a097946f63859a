package chart

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sampledBy is a grid of a function.
func sampledBy(n int, f func(x, y float64) float64) grid {
	g := grid{dx: 2 / float64(n), dy: 2 / float64(n), x0: -1, y0: -1}
	for j := range n + 1 {
		row := make([]float64, n+1)
		for i := range row {
			p := g.at(i, j)
			row[i] = f(p.X, p.Y)
		}
		g.value = append(g.value, row)
	}
	return g
}

func TestTheLineOfEqualDistanceIsACircle(t *testing.T) {
	g := sampledBy(80, math.Hypot)
	lines := g.contours(0.6)
	require.Len(t, lines, 1)
	long := 0.0
	for i, p := range lines[0] {
		assert.InDelta(t, 0.6, math.Hypot(p.X, p.Y), 1e-3)
		if i > 0 {
			long += math.Hypot(p.X-lines[0][i-1].X, p.Y-lines[0][i-1].Y)
		}
	}
	assert.InDelta(t, 2*math.Pi*0.6, long, 0.01, "it goes all round once")
	assert.Equal(t, lines[0][0], lines[0][len(lines[0])-1])
}

func TestTheLineOfASlopeIsStraightFromEdgeToEdge(t *testing.T) {
	lines := sampledBy(20, func(x, y float64) float64 { return x + y/2 }).contours(0.13)
	require.Len(t, lines, 1)
	for _, p := range lines[0] {
		assert.InDelta(t, 0.13, p.X+p.Y/2, 1e-9)
	}
	assert.InDelta(t, 2, math.Abs(lines[0][0].Y-lines[0][len(lines[0])-1].Y), 1e-9)
}

// Of a saddle the two branches do not meet.
func TestTheLinesOfASaddleKeepApart(t *testing.T) {
	lines := sampledBy(41, func(x, y float64) float64 { return x * y }).contours(0.05)
	require.Len(t, lines, 2)
	for _, line := range lines {
		for _, p := range line {
			assert.Positive(t, p.X*line[0].X)
		}
	}
}

func TestWhereAFieldIsNotKnownThereIsNoLine(t *testing.T) {
	lines := sampledBy(40, func(x, y float64) float64 {
		if math.Abs(y) < 0.2 {
			return math.NaN()
		}
		return x
	}).contours(0.01)
	require.Len(t, lines, 2)
	assert.Empty(t, sampledBy(10, func(x, y float64) float64 { return 1 }).contours(2))
}

func TestAFieldIsInProportionBetweenItsPoints(t *testing.T) {
	f := &Field{At: []float64{0, 10}, Depth: []float64{1, 3, 5}, Value: [][]float64{{0, 10}, {20, 30}, {40, math.NaN()}}}
	for _, c := range []struct{ at, depth, want float64 }{{0, 1, 0}, {5, 1, 5}, {0, 2, 10}, {5, 2, 15}, {10, 3, 30}, {0, 5, 40}, {0, 0.2, 0}} {
		assert.InDelta(t, c.want, f.value(c.at, c.depth), 1e-12, "%g at %g", c.depth, c.at)
	}
	for _, c := range []struct{ at, depth float64 }{{-1, 1}, {11, 1}, {5, 6}, {10, 4}, {5, -1}} {
		assert.True(t, math.IsNaN(f.value(c.at, c.depth)), "%g at %g", c.depth, c.at)
	}
}

func TestEachValueOfAFieldHasTheColourOfItsStep(t *testing.T) {
	ticks := NiceTicks(0, 45, 10, 0)
	assert.Equal(t, []int{0, 0, 1, 8, 8, -1}, []int{ticks.step(-3), ticks.step(4.9), ticks.step(5), ticks.step(44), ticks.step(99), ticks.step(math.NaN())})
	assert.Equal(t, Step(0), step(0, 5))
	assert.Equal(t, Step(Steps-1), step(4, 5))
}
