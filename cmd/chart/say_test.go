package chart_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/chart"
)

func TestAChartSaysWhereItsLinesBeginEndAndTurn(t *testing.T) {
	now := 30 * hour
	c := chart.Chart{Title: "Batch 26-03", Sub: "of 6 kg", Start: time.Date(2026, 3, 12, 7, 0, 0, 0, time.UTC), To: 2 * day, Now: &now, Panels: []chart.Panel{{
		Name: "moisture", Unit: "%", Places: 1,
		Lines:  []chart.Line{{Name: "moisture", At: []float64{0, day, 2 * day, 3 * day}, Value: []float64{12.4, 45.04, 44, math.NaN()}}},
		Bands:  []chart.Band{{Name: "8 of 10 cases", At: []float64{day, 2 * day}, Low: []float64{44, 43.8}, High: []float64{46, 44.3}}},
		Points: []chart.Point{{Value: 12.5}, {At: day, Value: 44}, {At: day, Value: 30, Doubted: true}},
		Gates:  []chart.Gate{{Value: 43, Name: "moisture at least 43 %"}, {Value: 44, Name: "moisture at least 43 %"}},
	}}}
	assert.Equal(t, "Batch 26-03: of 6 kg. From Thu 12 Mar 07:00 to Sat 14 Mar 07:00. Now is Fri 13 Mar 13:00. "+
		"Moisture: begins at 12.4 %, is at most 45.0 % at Fri 13 Mar 07:00, ends at 44.0 % at Sat 14 Mar 07:00. "+
		"Moisture, 8 of 10 cases: ends at 43.8 to 44.3 % at Sat 14 Mar 07:00, is widest with 44.0 to 46.0 % at Fri 13 Mar 07:00. "+
		"Moisture was measured 3 times, from 12.5 to 44.0 %; once in doubt. "+
		"A line marks moisture at least 43 %. A line marks moisture at least 43 % at 44.0 %.", c.Say())
}

func TestBarsSayTheirValues(t *testing.T) {
	b := chart.Bars{Title: "Drivers", Groups: []chart.BarGroup{{Name: "total time", Unit: "%", Bars: []chart.Bar{{Name: "air", Value: 46, Error: 6}, {Name: "water", Value: 31, Text: "a third"}}}}}
	assert.Equal(t, "Drivers. Total time: air 46 ± 6 %; water a third.", b.Say())
}
