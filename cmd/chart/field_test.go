package chart_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/chart"
)

// What a colour says stands in numbers too: at the scale, and on the lines of equal value.
func TestAFieldCanBeReadWithoutItsColours(t *testing.T) {
	f := &chart.Field{Name: "moisture of the bed", Unit: "%", At: []float64{0, day}, Depth: []float64{0, 10}, Value: [][]float64{{45, 5}, {45, 25}}}
	for _, width := range []float64{390, 900} {
		r := laid(t, one(chart.Panel{Name: "height", Unit: "cm", Field: f}), width)
		said := r.saying()
		assert.Contains(t, said, "moisture of the bed, %")
		for _, level := range []string{"10", "15", "20", "25", "30", "35", "40"} {
			assert.GreaterOrEqual(t, count(said, level), 2, "%s at %g px: at the scale and on its line", level, width)
		}
		inks := map[chart.Ink]bool{}
		for _, b := range r.boxes {
			inks[b.Ink] = true
		}
		assert.True(t, inks[chart.Step(0)] && inks[chart.Step(chart.Steps-1)])
	}
}
