package timetable_test

import (
	"testing"
	"time"
	_ "time/tzdata" // the zones of the tests, on every machine

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/sample"
	"maltwright/cmd/answer/timetable"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

func in(t *testing.T, zone, text string) time.Time {
	t.Helper()
	z, err := time.LoadLocation(zone)
	require.NoError(t, err)
	when, err := time.ParseInLocation("2006-01-02T15:04", text, z)
	require.NoError(t, err)
	return when
}

func of(t *testing.T, f *forecast.Forecast, when time.Time, back bool) timetable.Result {
	t.Helper()
	r, err := timetable.Of(f, when, back)
	require.NoError(t, err)
	return r
}

// The summer time of Berlin begins on 29 March 2026 at 01:00 UTC (time zone
// database): a turn eight hours after one at 22:00 is at 07:00 there, and 05:00 UTC.
func TestVisitsKeepTheirDistanceOverTheChangeOfTheClocks(t *testing.T) {
	for _, c := range []struct{ zone, start, change string }{
		{"Europe/Berlin", "2026-03-25T07:00", "2026-03-29T01:00"},
		{"America/New_York", "2026-10-28T07:00", "2026-11-01T06:00"},
	} {
		x := of(t, sample.Forecast(t, "pale.malt"), in(t, c.zone, c.start), false)
		_, before := x.Start.Zone()
		change := in(t, "UTC", c.change)
		n := 0
		for _, v := range x.Visits {
			assert.InDelta(t, float64(v.At), v.Time.Sub(x.Start).Seconds(), 30, "to the minute")
			_, offset := v.Time.Zone()
			assert.Equal(t, v.Time.Before(change), offset == before, "%s", v.Time)
			if !v.Time.Before(change) {
				n++
			}
		}
		assert.Positive(t, n, "some come after the change")
	}
}

func TestReadyIsTheInverseOfStart(t *testing.T) {
	for _, name := range []string{"pale.malt", "wheat.malt", "crystal.malt"} {
		f := sample.Forecast(t, name)
		for _, start := range []time.Time{in(t, "UTC", "2026-01-01T00:00"), in(t, "Europe/Berlin", "2026-03-27T23:15"), in(t, "America/New_York", "2026-10-27T05:45")} {
			there := of(t, f, start, false)
			back := of(t, f, there.Ready, true)
			assert.True(t, start.Equal(back.Start), "%s: %s and %s", name, start, back.Start)
			assert.True(t, there.Ready.Equal(back.Ready))
			assert.Equal(t, len(there.Visits), len(back.Visits))
		}
	}
}

func TestTheBestStartIsBeatenByNoOther(t *testing.T) {
	f := sample.Forecast(t, "pale.malt")
	awake := f.Process.Site.Hours
	list := visits.Gather(visits.List(f))
	for _, start := range []string{"2026-03-06T07:00", "2026-03-25T14:10", "2026-03-29T12:00"} {
		for _, back := range []bool{false, true} {
			x := of(t, f, in(t, "Europe/Berlin", start), back)
			best := len(visits.Missed(list, visits.From(x.Night.Best.Start), awake))
			assert.Equal(t, best, x.Night.Best.Visits)
			assert.LessOrEqual(t, best, x.Night.Given.Visits)
			if back {
				assert.False(t, x.Night.Best.Ready.After(x.Ready), "the malt would come too late")
			}
			for second := 0; second < 86400; second += 1800 {
				if !awake.Up(second) {
					continue
				}
				at := visits.On(x.Start, second)
				if back && at.After(x.Start) {
					at = visits.On(x.Start.AddDate(0, 0, -1), second)
				}
				n := of(t, f, at, false).Night.Given.Visits
				assert.GreaterOrEqual(t, n, best)
				assert.LessOrEqual(t, n, x.Night.Worst.Visits)
			}
		}
	}
}

func TestWhatHasNoTimetableSaysWhy(t *testing.T) {
	f := sample.Forecast(t, "pale.malt")
	broken := *f
	broken.Trouble = []forecast.Trouble{forecast.Unable{Stage: model.KilnStage, Cause: forecast.NoMalt{}}}
	_, err := timetable.Of(&broken, in(t, "UTC", "2026-03-06T07:00"), false)
	assert.ErrorIs(t, err, timetable.ErrBrokenOff)

	empty := *f
	empty.Stages = nil
	_, err = timetable.Of(&empty, in(t, "UTC", "2026-03-06T07:00"), false)
	assert.EqualError(t, err, `no timetable, for "Loft pale" has no steps`)
}

func TestATaskCarriesTheValuesOfItsWords(t *testing.T) {
	x := of(t, sample.Forecast(t, "pale.malt"), in(t, "UTC", "2026-03-06T07:00"), false)
	first := x.Visits[0].Tasks[0]
	assert.Equal(t, visits.Fill, first.Kind)
	assert.Equal(t, "soak 1", first.Name)
	assert.EqualValues(t, 7*3600, first.Lasts)
	require.NotNil(t, first.Temperature)
	assert.Equal(t, "water", first.Temperature.Place)
	assert.Equal(t, timetable.Sentence(first.Do), first.Words)
	assert.Equal(t, outlook.ClockAt(x.Start, x.Visits[0].At), x.Visits[0].Time)
}

// The end of a step is told at one minute, by the forecast and by the visits.
func TestVisitsStandAtTheMinutesOfTheForecast(t *testing.T) {
	for _, name := range []string{"pale.malt", "oven.malt"} {
		f, start := sample.Forecast(t, name), in(t, "UTC", "2026-03-06T07:00")
		ends := map[answer.Seconds]time.Time{}
		outlook.Of(f, start).Rows(func(s outlook.Row) { ends[s.End] = s.EndTime })
		same := 0
		x := of(t, f, start, false)
		for _, v := range x.Visits {
			assert.Zero(t, v.Time.Second(), name)
			if end, ok := ends[v.At]; ok {
				assert.Equal(t, end, v.Time, name)
				same++
			}
		}
		assert.Greater(t, same, 5, name)
		assert.Equal(t, outlook.ClockAt(start, answer.Seconds(f.Totals.Total)), x.Ready, name)
		assert.Zero(t, of(t, f, start, true).Start.Second(), name)
	}
}

// What comes off the kiln wet is not put away: the visits end at the kiln, and no rest is over.
func TestVisitsOfWhatIsNoMaltEndAtTheKiln(t *testing.T) {
	f := sample.Forecast(t, "pale.malt")
	start := in(t, "UTC", "2026-03-06T07:00")
	dry := of(t, f, start, false)
	assert.Nil(t, dry.NoMalt)
	require.False(t, dry.Rested.IsZero())

	f.Totals.FinalMoisture = forecast.WitheredMoisture + 0.1
	wet := of(t, f, start, false)
	require.NotNil(t, wet.NoMalt)
	assert.True(t, wet.Rested.IsZero())
	assert.True(t, wet.Ready.Before(dry.Ready))
	last := wet.Visits[len(wet.Visits)-1]
	assert.Equal(t, visits.Unload, last.Tasks[len(last.Tasks)-1].Kind)
	assert.WithinDuration(t, wet.Ready, last.Time, time.Second)
	for _, v := range wet.Visits {
		for _, task := range v.Tasks {
			assert.NotContains(t, []visits.Kind{visits.Deculm, visits.Put, visits.Rested}, task.Kind)
		}
	}
	assert.True(t, start.Equal(of(t, f, wet.Ready, true).Start), "reckoned back")
}
