package chart_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/chart"
)

const (
	hour = 3600.0
	day  = 24 * hour
)

// zone skips where the machine has no table of time zones.
func zone(t *testing.T, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	if err != nil {
		t.Skipf("no time zone %s: %v", name, err)
	}
	return z
}

func labels(ticks []chart.Tick) (list []string) {
	for _, t := range ticks {
		list = append(list, t.Text)
	}
	return list
}

func TestHoursAreThoseOfTheHousesClock(t *testing.T) {
	c := chart.Chart{Start: time.Date(2026, 3, 12, 7, 20, 0, 0, zone(t, "Europe/Berlin"))}
	ticks := c.Clock().Ticks(0, day, 5*hour)
	assert.Equal(t, []string{"12:00", "18:00", "00:00", "06:00"}, labels(ticks))
	assert.InDelta(t, 4*hour+40*60, ticks[0].At, 1e-9)
}

// On the last Sunday of March 2026 clocks in Berlin go from 02:00 to 03:00, on that of October back from 03:00 to 02:00
// (common practice: the rule of the European Union).
func TestOfANightWhenTheClockIsChangedEveryHourThatIsThereHasOneTick(t *testing.T) {
	berlin := zone(t, "Europe/Berlin")
	spring := chart.Chart{Start: time.Date(2026, 3, 29, 0, 0, 0, 0, berlin)}.Clock()
	ticks := spring.Ticks(0, 4*hour, hour)
	assert.Equal(t, []string{"00:00", "01:00", "03:00", "04:00", "05:00"}, labels(ticks))
	assert.InDelta(t, 2*hour, ticks[2].At, 1e-9, "03:00 is two hours after midnight")
	days := spring.Days(0, day)
	require.Len(t, days, 2)
	assert.InDelta(t, 23*hour, days[0].To-days[0].From, 1e-9)

	autumn := chart.Chart{Start: time.Date(2026, 10, 25, 0, 0, 0, 0, berlin)}.Clock()
	ticks = autumn.Ticks(0, 5*hour, hour)
	assert.Equal(t, []string{"00:00", "01:00", "02:00", "03:00", "04:00"}, labels(ticks))
	assert.InDelta(t, 4*hour, ticks[3].At, 1e-9, "03:00 is four hours after midnight")
	assert.InDelta(t, 25*hour, autumn.Days(0, day)[0].To, 1e-9)
}

func TestWithoutAStartTimesAreLengthsOfTime(t *testing.T) {
	k := chart.Chart{}.Clock()
	assert.Equal(t, []string{"-12 h", "0", "12 h", "1 d", "1 d 12 h"}, labels(k.Ticks(-12*hour, 1.5*day, 7*hour)))
	assert.Equal(t, []string{"0", "5 min", "10 min", "15 min", "20 min"}, labels(k.Ticks(0, 20*60, 180)))
	assert.Equal(t, "2 d 14 h", k.Say(2*day+14*hour))
	assert.Equal(t, "0 h", k.Say(0))
}

func TestATimeIsSaidAsTheHouseSaysIt(t *testing.T) {
	k := chart.Chart{Start: time.Date(2026, 3, 12, 7, 0, 0, 0, time.UTC)}.Clock()
	assert.Equal(t, "Sun 15 Mar 14:00", k.Say(3*day+7*hour))
	days := k.Days(-hour, 2*day)
	assert.Equal(t, "Thu 12 Mar", days[0].Name)
	assert.Len(t, days, 3)
}

func TestMidnightAtTheEndOfADayHasItsTick(t *testing.T) {
	k := chart.Chart{Start: time.Date(2026, 3, 12, 0, 0, 0, 0, time.UTC)}.Clock()
	assert.Equal(t, []string{"00:00", "06:00", "12:00", "18:00", "00:00"}, labels(k.Ticks(0, day, 6*hour)))
}

func TestWhereOnlyDaysFitTheClockHasNoHours(t *testing.T) {
	k := chart.Chart{Start: time.Date(2026, 3, 12, 0, 0, 0, 0, time.UTC)}.Clock()
	assert.Empty(t, k.Ticks(0, 40*day, 2*day))
}
