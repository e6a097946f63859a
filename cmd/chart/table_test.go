package chart_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/cmd/chart"
)

func TestATableHasValuesBetweenThePointsOfALine(t *testing.T) {
	now := 5 * hour
	c := chart.Chart{To: 8 * hour, Now: &now, Stages: []chart.Span{{To: 3 * hour, Name: "steep"}}, Panels: []chart.Panel{{Name: "grain", Unit: "°C", Places: 1, Lines: []chart.Line{
		{Name: "warm", At: []float64{0, 8 * hour}, Value: []float64{10, 18}},
		{Name: "set", Step: true, At: []float64{0, 4 * hour, 4 * hour, 8 * hour}, Value: []float64{12, 12, 20, 20}},
		{Name: "broken", At: []float64{0, hour, 2 * hour}, Value: []float64{1, math.NaN(), 3}},
	}}}}
	list := c.Tables()
	require.Len(t, list, 1)
	assert.Equal(t, "grain, °C", list[0].Name)
	assert.Equal(t, []string{"time", "warm", "set", "broken"}, list[0].Head)
	rows := map[string][]string{}
	for _, r := range list[0].Rows {
		rows[r[0]] = r[1:]
	}
	assert.Equal(t, []string{"10.0", "12.0", "1.0"}, rows["0 h"])
	assert.Equal(t, []string{"10.5", "12.0", "—"}, rows["30 min"])
	assert.Equal(t, []string{"13.0", "12.0", "—"}, rows["3 h"])
	assert.Equal(t, []string{"14.0", "20.0", "—"}, rows["4 h"], "a step holds from its time on")
	assert.Equal(t, []string{"15.0", "20.0", "—"}, rows["5 h"])
	assert.Equal(t, []string{"18.0", "20.0", "—"}, rows["8 h"])
}

func TestATableOfABedHasItsDepths(t *testing.T) {
	f := &chart.Field{Name: "moisture", At: []float64{0, hour}, Depth: []float64{0, 5, 10}, Value: [][]float64{{40, 10}, {42, 20}, {44, math.NaN()}}}
	list := chart.Chart{Panels: []chart.Panel{{Name: "height", Unit: "cm", Field: f}}}.Tables()
	require.Len(t, list, 1)
	assert.Equal(t, []string{"time", "at 0 cm", "at 5 cm", "at 10 cm"}, list[0].Head)
	assert.Equal(t, []string{"0 h", "40", "42", "44"}, list[0].Rows[0])
	assert.Equal(t, []string{"1 h", "10", "20", "—"}, list[0].Rows[len(list[0].Rows)-1])
}

func TestAnyChartHasTablesOfReasonableLengthAndASaying(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := charts.Draw(t, "chart")
		for _, table := range c.Tables() {
			assert.LessOrEqual(t, len(table.Rows), 60)
			for _, r := range table.Rows {
				assert.Len(t, r, len(table.Head))
			}
		}
		assert.NotContains(t, c.Say(), "NaN")
		assert.NotContains(t, c.Say(), "Inf")
	})
}
