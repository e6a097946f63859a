package text

import (
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/sample"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

// withBag is the forecast of the pale malt with 100 g of it in a bag; the tub weighs 990 g.
func withBag(t *testing.T, tub string) *forecast.Forecast {
	f := sample.Forecast(t, "pale.malt")
	q, err := quantity.Make(quantity.Part{Number: "100", Unit: "g"})
	require.NoError(t, err)
	f.Process.Bag = &model.Quantity{Quantity: q}
	model.First[*model.Steep](f.Process).Vessel.Name = tub
	return f
}

// The first soak brings 6 kg to 7.34 kg: 8.33 kg with the tub, and 100 g to 122 g.
func TestTablesShowWhatTheScaleShows(t *testing.T) {
	start := time.Date(2026, 9, 30, 7, 0, 0, 0, time.UTC)
	for _, tub := range []string{"blue tub", strings.Repeat("the long trough at the end of the yard ", 3)} {
		f := withBag(t, tub)
		var table, visits strings.Builder
		require.NoError(t, Outlook(&table, outlook.Of(f, time.Time{}), words.Of(f.Process), Options{}))
		require.NoError(t, Outlook(&table, outlook.Of(f, start), words.Of(f.Process), Options{}))
		r, err := timetable.Of(f, start, false)
		require.NoError(t, err)
		require.NoError(t, Timetable(&visits, r, words.Of(f.Process), Options{}))
		for _, line := range strings.Split(table.String()+visits.String(), "\n") {
			assert.LessOrEqual(t, utf8.RuneCountInString(line), 80, line)
		}
		for _, out := range []string{table.String(), visits.String()} {
			assert.Contains(t, out, "8.33 kg")
			assert.Contains(t, out, "120 g", "the finest scale shows 5 g: 122.3 g are nearer to 120")
		}
		if tub != "blue tub" {
			assert.Contains(t, table.String(), "gross         the grain with what it lies in: the long trough at the end")
		} else {
			assert.Contains(t, table.String(), " wet   scale blue tub the bag ended\n")
			assert.Contains(t, table.String(), " 28.7 % 7.34 kg  8.33 kg   120 g its time\n")
			assert.Contains(t, visits.String(), "7.34 kg  drain soak 1, weigh; then 9 h in air\n                  in \"blue tub\"  8.33 kg    at 14 °C\n                        the bag    120 g\n")
		}
	}
}
