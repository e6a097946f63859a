package text

import (
	"maltwright/sim/forecast"
	"math"
	"reflect"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/sample"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
)

func TestOutlookAndTimetableFitTheScreen(t *testing.T) {
	start := time.Date(2026, 9, 30, 7, 0, 0, 0, time.UTC)
	for _, name := range []string{"pale.malt", "floor-kiln.malt", "crystal.malt", "deep-bed.malt", "dryer.malt", "oats.malt", "box.malt"} {
		f := sample.Forecast(t, name)
		r, err := timetable.Of(f, start, false)
		require.NoError(t, err)
		var out strings.Builder
		require.NoError(t, Timetable(&out, r, words.Of(f.Process), Options{}))
		require.NoError(t, Outlook(&out, outlook.Of(f, start), words.Of(f.Process), Options{}))
		for _, line := range strings.Split(out.String(), "\n") {
			assert.LessOrEqual(t, utf8.RuneCountInString(line), 80, line)
		}
	}
}

func TestAClockIsToTheMinute(t *testing.T) {
	start := time.Date(2026, 3, 6, 7, 0, 0, 0, time.UTC)
	for _, seconds := range []float64{0, 29, 31, 3599, 3629.6, 86369} {
		_, shown, _ := strings.Cut(clock(outlook.Step{End: answer.Seconds(seconds)}, start), " ")
		at, err := time.Parse("15:04", shown)
		require.NoError(t, err)
		since := at.Hour()*60 + at.Minute() - 7*60
		assert.Equal(t, int(math.Round(seconds/60))%1440, (since+1440)%1440, "%v s", seconds)
	}
}

func TestEveryTotalOfTheSpreadIsTold(t *testing.T) {
	r, err := outlook.Ask(t.Context(), sample.Forecast(t, "pale.malt"), outlook.Options{Members: 10})
	require.NoError(t, err)
	rows := (&Sheet{}).spreadTotals(r.Spread.Totals)
	assert.Len(t, rows, reflect.TypeFor[outlook.TotalsSpread]().NumField()-1, "but for fuel: the kiln is electric")
}

func TestTheTimetableSaysWhatIsNoMalt(t *testing.T) {
	f := sample.Forecast(t, "pale.malt")
	f.Totals.FinalMoisture = forecast.WitheredMoisture + 0.1
	r, err := timetable.Of(f, time.Date(2026, 9, 30, 7, 0, 0, 0, time.UTC), false)
	require.NoError(t, err)
	var out strings.Builder
	require.NoError(t, Timetable(&out, r, words.Of(f.Process), Options{}))
	said := strings.Join(strings.Fields(out.String()), " ")
	assert.Contains(t, said, "no malt the grain comes off the kiln at 30.0 % moisture: above 20 % it sours and moulds within days")
	for _, of := range []string{"may be used", "put it away", "rested", "ready"} {
		assert.NotContains(t, said, of)
	}
}
