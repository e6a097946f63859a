package calendar

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// now is a Wednesday, at a quarter past three in the afternoon.
var now = time.Date(2026, 3, 4, 15, 15, 0, 0, time.UTC)

func TestTimesAsPeopleSayThem(t *testing.T) {
	for _, c := range []struct{ text, ahead, back string }{
		{"now", "2026-03-04 15:15", ""},
		{"in 2 h", "2026-03-04 17:15", ""},
		{"in 2h 30 min", "2026-03-04 17:45", ""},
		{"in an hour", "2026-03-04 16:15", ""},
		{"in half an hour", "2026-03-04 15:45", ""},
		{"in 3 days", "2026-03-07 15:15", ""},
		{"2 h ago", "2026-03-04 13:15", ""},
		{"20 minutes ago", "2026-03-04 14:55", ""},
		{"today 14:00", "2026-03-04 14:00", ""},
		{"tomorrow 7am", "2026-03-05 07:00", ""},
		{"Tomorrow at 7 am", "2026-03-05 07:00", ""},
		{"7am tomorrow", "2026-03-05 07:00", ""},
		{"yesterday 21:00", "2026-03-03 21:00", ""},
		{"tonight 21:00", "2026-03-04 21:00", ""},
		{"the day after tomorrow, 6.45 am", "2026-03-06 06:45", ""},
		{"fri 18:00", "2026-03-06 18:00", "2026-02-27 18:00"},
		{"friday 6pm", "2026-03-06 18:00", "2026-02-27 18:00"},
		{"on Friday at 6 pm", "2026-03-06 18:00", "2026-02-27 18:00"},
		{"18:00 on friday", "2026-03-06 18:00", "2026-02-27 18:00"},
		{"wed 15:00", "2026-03-04 15:00", "2026-03-04 15:00"}, // within the slack
		{"wed 12:00", "2026-03-11 12:00", "2026-03-04 12:00"},
		{"last wed 18:00", "2026-02-25 18:00", ""},
		{"last sat 9:00", "2026-02-28 09:00", ""},
		{"14:00", "2026-03-05 14:00", "2026-03-04 14:00"},
		{"15:30", "2026-03-04 15:30", "2026-03-04 15:30"},
		{"16:00", "2026-03-04 16:00", "2026-03-03 16:00"},
		{"2pm", "2026-03-05 14:00", "2026-03-04 14:00"},
		{"noon", "2026-03-05 12:00", "2026-03-04 12:00"},
		{"7.15", "2026-03-05 07:15", "2026-03-04 07:15"},
		{"7h15", "2026-03-05 07:15", "2026-03-04 07:15"},
		{"7h", "2026-03-05 07:00", "2026-03-04 07:00"},
		{"0715", "2026-03-05 07:15", "2026-03-04 07:15"},
		{"14 Uhr", "2026-03-05 14:00", "2026-03-04 14:00"},
		{"14 Uhr 30", "2026-03-05 14:30", "2026-03-04 14:30"},
		{"2026-03-06 14:00", "2026-03-06 14:00", ""},
		{"2026-03-06T14:00", "2026-03-06 14:00", ""},
		{"2026-03-06T1400", "2026-03-06 14:00", ""},
		{"20260306 1400", "2026-03-06 14:00", ""},
		{"2026-03-06 7:30PM", "2026-03-06 19:30", ""},
		{"2026-3-6 7:30", "2026-03-06 07:30", ""},
		{"27.01.2026 6:45am", "2026-01-27 06:45", ""},
		{"27/01/2026 06:45", "2026-01-27 06:45", ""},
		{"1/27/2026 06:45", "2026-01-27 06:45", ""},
		{"2026/01/27 06:45", "2026-01-27 06:45", ""},
		{"Jan 27 2026 06:45", "2026-01-27 06:45", ""},
		{"January 27th, 2026, 6.45 am", "2026-01-27 06:45", ""},
		{"27 Jan 2026 06:45", "2026-01-27 06:45", ""},
		{"27. January 2026 06:45", "2026-01-27 06:45", ""},
		{"Tue 27 Jan 2026 06:45", "2026-01-27 06:45", ""},
		{"27th of January 06:45", "2027-01-27 06:45", "2026-01-27 06:45"},
		{"27.01. 06:45", "2027-01-27 06:45", "2026-01-27 06:45"},
		{"Fri 06/03/2026 14:00", "2026-03-06 14:00", ""}, // the 3rd of June is a Wednesday
		{"04/04/2026 14:00", "2026-04-04 14:00", ""},
		{"29 Feb 12:00", "2028-02-29 12:00", "2024-02-29 12:00"},
	} {
		for _, back := range []bool{false, true} {
			want := c.ahead
			if back && c.back != "" {
				want = c.back
			}
			m, err := Reader{Now: now, Back: back}.One(c.text)
			if assert.NoError(t, err, c.text) {
				assert.Equal(t, want, m.At.Format("2006-01-02 15:04"), "%s, back %t", c.text, back)
			}
		}
	}
}

func TestWhatMayBeTwoTimesIsGivenWithBoth(t *testing.T) {
	for text, want := range map[string][]string{
		"03/04/2026 07:00": {"2026-04-03 07:00", "2026-03-04 07:00"},
		"03.04.2026 07:00": {"2026-04-03 07:00", "2026-03-04 07:00"},
		"next fri 18:00":   {"2026-03-06 18:00", "2026-03-13 18:00"},
		"27/01/26 07:00":   {"2026-01-27 07:00", "2027-01-26 07:00"},
	} {
		list, err := Reader{Now: now}.Read(text)
		require.NoError(t, err, text)
		var got []string
		for _, m := range list {
			got = append(got, m.At.Format("2006-01-02 15:04"))
		}
		assert.Equal(t, want, got, text)
		_, err = Reader{Now: now}.One(text)
		assert.ErrorContains(t, err, " or ", text)
	}
}

func TestTheLocaleSettlesOnlyWhatIsOpen(t *testing.T) {
	for _, c := range []struct {
		order      Order
		text, want string
	}{
		{DayFirst, "03/04/2026 07:00", "2026-04-03"}, {MonthFirst, "03/04/2026 07:00", "2026-03-04"},
		{DayFirst, "1/27/2026 07:00", "2026-01-27"}, {MonthFirst, "27/01/2026 07:00", "2026-01-27"},
		{DayFirst, "27/01/26 07:00", "2026-01-27"},
	} {
		m, err := Reader{Now: now, Order: c.order}.One(c.text)
		require.NoError(t, err, c.text)
		assert.Equal(t, c.want, m.At.Format(time.DateOnly), c.text)
	}
	m, err := Reader{Now: now, Order: DayFirst}.One("03/04/2026 07:00")
	require.NoError(t, err)
	assert.True(t, m.Filled, "it is told back")
	for locale, want := range map[string]Order{"en_US.UTF-8": MonthFirst, "en_GB.UTF-8": DayFirst, "de_DE": DayFirst, "en_CA.UTF-8": Unknown, "fr_CA": Unknown, "C.UTF-8": Unknown, "": Unknown, "POSIX": Unknown, "es_PR": Unknown, "de_AT@euro": DayFirst} {
		assert.Equal(t, want, OrderOf(func(key string) string { return map[string]string{"LC_TIME": locale}[key] }), locale)
	}
}

func TestWhatIsNoTimeSaysWhatItLacks(t *testing.T) {
	for text, want := range map[string]string{
		"":                        "is no time",
		"soon":                    "is no time",
		"2026-03-06":              "is a day; write the time of day too, as 2026-03-06T07:00",
		"tomorrow":                "is a day; write the time of day too, as 2026-03-05T07:00",
		"fri":                     "is a day; write the time of day too, as 2026-03-06T07:00",
		"2026-03-06 7":            "write the minutes or am or pm behind 7 too, as 07:00 or 19:00",
		"2026-03-06 7 o'clock":    "as 07:00 or 19:00",
		"14":                      "as 14:00",
		"2026-03-06 25:00":        "no clock shows 25:00",
		"2026-02-30 07:00":        "is no time",
		"Mon 2026-03-06 07:00":    "is no time", // a Friday
		"2026":                    "is no time",
		"9999-12-31 23:00":        "the year must lie in 1900 to 2999",
		"in 300 years":            "is no time",
		"in 7 kg":                 "is no time",
		"7 am 8 am":               "is no time",
		"2026-03-06 2026-03-07":   "is no time",
		"2026-03-06T07:00+01:00x": "is no time",
	} {
		_, err := Reader{Now: now}.One(text)
		require.Error(t, err, text)
		assert.ErrorContains(t, err, want, text)
		require.ErrorAs(t, err, new(*Error))
	}
}

func TestATimeOfDayMayNeedItsDay(t *testing.T) {
	_, err := Reader{Now: now, Dated: true}.One("2pm")
	assert.ErrorContains(t, err, "is a time of day; write its date too, as 2026-03-06T14:00")
	_, err = Reader{Now: now, Dated: true}.One("fri 2pm")
	assert.NoError(t, err)
}

func TestTimesNameTheirOffset(t *testing.T) {
	for text, want := range map[string]string{
		"2026-03-29T02:30:00Z":      "2026-03-29T02:30:00Z",
		"2026-03-06T07:00+01:00":    "2026-03-06T07:00:00+01:00",
		"2026-03-06 7:00 am":        "2026-03-06T07:00:00Z",
		"2026-03-06T07:00:30-05:00": "2026-03-06T07:00:30-05:00",
	} {
		m, err := Reader{Now: now}.One(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, m.At.Format(time.RFC3339), text)
	}
}

func TestDaysAlone(t *testing.T) {
	for text, want := range map[string]string{"2026-03-06": "2026-03-06", "27.01.2026": "2026-01-27", "tomorrow": "2026-03-05", "today": "2026-03-04", "fri": "2026-03-06", "Jan 27": "2027-01-27"} {
		m, err := Reader{Now: now}.Day(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, m.At.Format(time.DateOnly), text)
	}
	for text, want := range map[string]string{"03/04/2026": "may be 2026-04-03 or 2026-03-04", "2026-03-06 07:00": "has a time of day", "2026-02-30": "is no", "7": "is no date", "": "is no date"} {
		_, err := Reader{Now: now}.Day(text)
		assert.ErrorContains(t, err, want, text)
	}
}

func TestClocksThatAreChangedAreMinded(t *testing.T) {
	zone, err := time.LoadLocation("America/New_York")
	if err != nil {
		t.Skip("this machine has no table of time zones")
	}
	in := Reader{Now: time.Date(2026, 3, 7, 12, 0, 0, 0, zone)}
	_, err = in.One("tomorrow 2:30")
	assert.ErrorContains(t, err, "the clocks are put forward then")
	m, err := in.One("in 1 day")
	require.NoError(t, err)
	assert.Equal(t, "2026-03-08 12:00", m.At.Format("2006-01-02 15:04"))
	m, err = in.One("in 24 h")
	require.NoError(t, err)
	assert.Equal(t, "2026-03-08 13:00", m.At.Format("2006-01-02 15:04"))
	_, err = in.One("2026-11-01 01:30")
	assert.ErrorContains(t, err, "comes twice; name its offset, such as 2026-11-01T01:30-0")
	_, err = in.One("2026-11-01T01:30-04:00")
	assert.NoError(t, err)
}

// On a Wednesday nobody calls the Wednesday before by its name alone: a time of it that has not come yet
// is asked about where what was read is meant.
func TestALaterTimeOfTodayIsNoTimeOfTheWeekBefore(t *testing.T) {
	_, err := Reader{Now: now, Back: true}.One("wed 18:00")
	assert.EqualError(t, err, " may be 2026-03-04T18:00 or 2026-02-25T18:00; write the one that is meant")
	m, err := Reader{Now: now}.One("wed 18:00")
	require.NoError(t, err)
	assert.Equal(t, "Wed 2026-03-04 18:00", m.String())
}
