package ics_test

import (
	"bytes"
	"strings"
	"testing"
	"time"
	_ "time/tzdata" // the zones of the tests, on every machine
	"unicode/utf8"

	"github.com/emersion/go-ical"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/sample"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
	"maltwright/cmd/write/ics"
	"maltwright/lang/source/golden"
	"maltwright/sim/forecast"
)

func in(t *testing.T, zone, text string) time.Time {
	t.Helper()
	z, err := time.LoadLocation(zone)
	require.NoError(t, err)
	when, err := time.ParseInLocation("2006-01-02T15:04", text, z)
	require.NoError(t, err)
	return when
}

func calendarOf(t *testing.T, f *forecast.Forecast, start time.Time) (string, timetable.Result) {
	t.Helper()
	r, err := timetable.Of(f, start, false)
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, ics.Write(&out, r, words.Of(f.Process)))
	return out.String(), r
}

func TestCalendarOfTheExample(t *testing.T) {
	text, _ := calendarOf(t, sample.Forecast(t, "pale.malt"), in(t, "Europe/Berlin", "2026-03-25T07:00"))
	golden.File(t, "testdata/visits.ics.golden", strings.ReplaceAll(text, "\r\n", "\n"))
}

func TestABatchOfGreenMaltHasNoFirstSoak(t *testing.T) {
	f := sample.Forecast(t, "pale.malt")
	for green, want := range map[bool]string{false: "after the first soak", true: "after it was begun"} {
		r, err := timetable.Of(f, in(t, "UTC", "2026-03-06T07:00"), false)
		require.NoError(t, err)
		r.Green = green
		var out bytes.Buffer
		require.NoError(t, ics.Write(&out, r, words.Of(f.Process)))
		assert.Contains(t, strings.ReplaceAll(out.String(), "\r\n ", ""), want)
	}
}

// What RFC 5545 asks of the bytes (3.1): lines of at most 75 octets that end in CR
// and LF, in UTF-8, no character parted, no control characters.
func TestCalendarKeepsTheLinesOfTheStandard(t *testing.T) {
	for _, name := range []string{"pale.malt", "floor-kiln.malt", "crystal.malt", "oats.malt"} {
		text, _ := calendarOf(t, sample.Forecast(t, name), in(t, "UTC", "2026-03-06T07:00"))
		require.True(t, strings.HasSuffix(text, "END:VCALENDAR\r\n"))
		for _, line := range strings.Split(strings.TrimSuffix(text, "\r\n"), "\r\n") {
			assert.LessOrEqual(t, len(line), 75, line)
			assert.True(t, utf8.ValidString(line), line)
			assert.NotContains(t, line, "\n")
			assert.NotContains(t, line, "\r")
			assert.NotEmpty(t, strings.TrimSpace(line))
		}
	}
}

// Another reader than the library that wrote it finds every visit again, at its
// instant, across the change of the clocks, each with its own UID and its alarm; and
// its writer, which refuses an event that lacks what the standard asks for, takes it.
func TestAnotherReaderFindsEveryVisit(t *testing.T) {
	f := sample.Forecast(t, "pale.malt")
	for zone, start := range map[string]string{
		"Europe/Berlin": "2026-03-25T07:00", "America/New_York": "2026-10-28T07:00", "UTC": "2026-06-01T06:30",
	} {
		text, x := calendarOf(t, f, in(t, zone, start))
		cal, err := ical.NewDecoder(strings.NewReader(text)).Decode()
		require.NoError(t, err)
		require.NoError(t, ical.NewEncoder(&bytes.Buffer{}).Encode(cal))
		events := cal.Events()
		require.Len(t, events, len(x.Visits), zone)
		uids := map[string]bool{}
		for i, e := range events {
			when, err := e.DateTimeStart(time.UTC)
			require.NoError(t, err)
			assert.Equal(t, x.Visits[i].Time.UTC(), when)
			id, err := e.Props.Text(ical.PropUID)
			require.NoError(t, err)
			assert.False(t, uids[id], "twice: %s", id)
			uids[id] = true
			summary, err := e.Props.Text(ical.PropSummary)
			require.NoError(t, err)
			assert.Contains(t, summary, words.Of(f.Process).Say(x.Visits[i].Tasks[0].Words))
			require.Len(t, e.Children, 1)
			require.Equal(t, ical.CompAlarm, e.Children[0].Name)
			before, err := e.Children[0].Props.Get(ical.PropTrigger).Duration()
			require.NoError(t, err)
			assert.Equal(t, -15*time.Minute, before)
		}
	}
}

func TestTheSameTimetableIsTheSameBytes(t *testing.T) {
	start := in(t, "Europe/Berlin", "2026-03-25T07:00")
	one, r := calendarOf(t, sample.Forecast(t, "pale.malt"), start)
	f := sample.Forecast(t, "pale.malt")
	again, _ := calendarOf(t, f, start)
	assert.Equal(t, one, again)

	back, err := timetable.Of(f, r.Ready, true)
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, ics.Write(&out, back, words.Of(f.Process)))
	assert.Equal(t, one, out.String(), "reckoned back")
}

// Names are the user's own words: with signs that iCalendar escapes, and wide ones at
// which a line may be parted only between characters.
func TestAnyNameComesBackFromTheCalendar(t *testing.T) {
	for _, name := range []string{`a; b, c \ d: "e" \n`, strings.Repeat("Größe 🌾 ", 30), "BEGIN:VEVENT"} {
		f := sample.Forecast(t, "pale.malt")
		f.Process.Name = name
		text, _ := calendarOf(t, f, in(t, "UTC", "2026-03-06T07:00"))
		for _, line := range strings.Split(text, "\r\n") {
			assert.LessOrEqual(t, len(line), 75)
			assert.True(t, utf8.ValidString(line))
		}
		cal, err := ical.NewDecoder(strings.NewReader(text)).Decode()
		require.NoError(t, err)
		words, err := cal.Events()[0].Props.Text(ical.PropDescription)
		require.NoError(t, err)
		assert.Contains(t, words, "\n"+name+", 0 h after the first soak")
	}
}

// The last visit of what comes off the kiln wet says that it is no malt, and no other one does.
func TestTheCalendarSaysWhatIsNoMalt(t *testing.T) {
	f := sample.Forecast(t, "pale.malt")
	f.Totals.FinalMoisture = forecast.WitheredMoisture + 0.1
	text, r := calendarOf(t, f, in(t, "UTC", "2026-03-06T07:00"))
	events := strings.Split(strings.ReplaceAll(text, "\r\n ", ""), "BEGIN:VEVENT")
	require.Len(t, events, len(r.Visits)+1)
	for i, e := range events {
		assert.Equal(t, i == len(r.Visits), strings.Contains(e, "no malt: the grain comes off the kiln at 30.0 % moisture"), i)
		assert.NotContains(t, e, "may be used")
	}
}
