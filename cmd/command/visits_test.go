package command

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"time"
	_ "time/tzdata" // the zones of the tests and scripts, on every machine
	"unicode/utf8"

	"github.com/emersion/go-ical"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

// made forecasts an example.
func made(t *testing.T, name string) *forecast.Forecast {
	t.Helper()
	w := World{In: strings.NewReader(""), Out: os.Stdout, Err: os.Stderr, Folder: "../../examples", Env: func(string) string { return "" }}
	f, err := Forecast{File: name}.made(&w, "visits")
	require.NoError(t, err)
	return f
}

func in(t *testing.T, zone, text string) time.Time {
	t.Helper()
	z, err := time.LoadLocation(zone)
	require.NoError(t, err)
	when, err := time.ParseInLocation("2006-01-02T15:04", text, z)
	require.NoError(t, err)
	return when
}

func calendarOf(t *testing.T, x timetable) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, writeVisitsCalendar(&World{Out: &out}, x))
	return out.String()
}

func TestCalendarOfTheExample(t *testing.T) {
	x := newTimetable(made(t, "pale.malt"), in(t, "Europe/Berlin", "2026-03-25T07:00"), false)
	golden.File(t, "testdata/visits.ics.golden", strings.ReplaceAll(calendarOf(t, x), "\r\n", "\n"))
}

// What RFC 5545 asks of the bytes (3.1): lines of at most 75 octets that end in CR
// and LF, in UTF-8, no character parted, no control characters.
func TestCalendarKeepsTheLinesOfTheStandard(t *testing.T) {
	for _, name := range []string{"pale.malt", "floor-kiln.malt", "crystal.malt", "oats.malt"} {
		text := calendarOf(t, newTimetable(made(t, name), in(t, "UTC", "2026-03-06T07:00"), false))
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
	for zone, start := range map[string]string{
		"Europe/Berlin": "2026-03-25T07:00", "America/New_York": "2026-10-28T07:00", "UTC": "2026-06-01T06:30",
	} {
		x := newTimetable(made(t, "pale.malt"), in(t, zone, start), false)
		cal, err := ical.NewDecoder(strings.NewReader(calendarOf(t, x))).Decode()
		require.NoError(t, err)
		require.NoError(t, ical.NewEncoder(&bytes.Buffer{}).Encode(cal))
		events := cal.Events()
		require.Len(t, events, len(x.visits), zone)
		uids := map[string]bool{}
		for i, e := range events {
			when, err := e.DateTimeStart(time.UTC)
			require.NoError(t, err)
			assert.Equal(t, clockAt(x.start, x.visits[i].At).UTC(), when)
			id, err := e.Props.Text(ical.PropUID)
			require.NoError(t, err)
			assert.False(t, uids[id], "twice: %s", id)
			uids[id] = true
			summary, err := e.Props.Text(ical.PropSummary)
			require.NoError(t, err)
			assert.Contains(t, summary, x.say(x.visits[i].Tasks[0]))
			require.Len(t, e.Children, 1)
			require.Equal(t, ical.CompAlarm, e.Children[0].Name)
			before, err := e.Children[0].Props.Get(ical.PropTrigger).Duration()
			require.NoError(t, err)
			assert.Equal(t, -15*time.Minute, before)
		}
	}
}

// The summer time of Berlin begins on 29 March 2026 at 01:00 UTC (time zone
// database): a turn eight hours after one at 22:00 is at 07:00 there, and 05:00 UTC.
func TestVisitsKeepTheirDistanceOverTheChangeOfTheClocks(t *testing.T) {
	for _, c := range []struct{ zone, start, change string }{
		{"Europe/Berlin", "2026-03-25T07:00", "2026-03-29T01:00"},
		{"America/New_York", "2026-10-28T07:00", "2026-11-01T06:00"},
	} {
		x := newTimetable(made(t, "pale.malt"), in(t, c.zone, c.start), false)
		_, before := x.start.Zone()
		change := in(t, "UTC", c.change)
		n := 0
		for _, v := range x.visits {
			when := clockAt(x.start, v.At)
			assert.InDelta(t, v.At, when.Sub(x.start).Seconds(), 0.5)
			_, offset := when.Zone()
			assert.Equal(t, when.Before(change), offset == before, "%s", when)
			if !when.Before(change) {
				n++
			}
		}
		assert.Positive(t, n, "some come after the change")
	}
}

func TestReadyIsTheInverseOfStart(t *testing.T) {
	for _, name := range []string{"pale.malt", "wheat.malt", "crystal.malt"} {
		f := made(t, name)
		for _, start := range []time.Time{in(t, "UTC", "2026-01-01T00:00"), in(t, "Europe/Berlin", "2026-03-27T23:15"), in(t, "America/New_York", "2026-10-27T05:45")} {
			there := newTimetable(f, start, false)
			back := newTimetable(f, there.ready, true)
			assert.True(t, start.Equal(back.start), "%s: %s and %s", name, start, back.start)
			assert.True(t, there.ready.Equal(back.ready))
			assert.Equal(t, calendarOf(t, there), calendarOf(t, back))
		}
	}
}

func TestTheBestStartIsBeatenByNoOther(t *testing.T) {
	f := made(t, "pale.malt")
	awake := *f.Process.Site.Awake
	for _, start := range []string{"2026-03-06T07:00", "2026-03-25T14:10", "2026-03-29T12:00"} {
		for _, back := range []bool{false, true} {
			x := newTimetable(f, in(t, "Europe/Berlin", start), back)
			best := len(visits.Missed(x.visits, visits.From(x.night.bestAt), awake))
			assert.Equal(t, best, x.night.best)
			assert.LessOrEqual(t, best, x.night.given)
			if back {
				assert.False(t, x.night.bestReady.After(x.ready), "the malt would come too late")
			}
			for second := 0; second < 86400; second += 1800 {
				if awake.Awake(second) {
					n := newTimetable(f, x.begunAt(second), false).night.given
					assert.GreaterOrEqual(t, n, best)
					assert.LessOrEqual(t, n, x.night.worst)
				}
			}
		}
	}
}

func TestTheSameTimetableIsTheSameBytes(t *testing.T) {
	f, start := made(t, "pale.malt"), in(t, "Europe/Berlin", "2026-03-25T07:00")
	assert.Equal(t, calendarOf(t, newTimetable(f, start, false)), calendarOf(t, newTimetable(made(t, "pale.malt"), start, false)))
}

func TestTimetableFitsTheScreen(t *testing.T) {
	for _, name := range []string{"pale.malt", "floor-kiln.malt", "crystal.malt", "deep-bed.malt", "dryer.malt", "oats.malt"} {
		var out bytes.Buffer
		require.NoError(t, writeVisitsText(&World{Out: &out, Env: os.Getenv}, newTimetable(made(t, name), in(t, "UTC", "2026-09-30T07:00"), false)))
		for _, line := range strings.Split(out.String(), "\n") {
			assert.LessOrEqual(t, utf8.RuneCountInString(line), 80, line)
		}
	}
}

// Names are the user's own words: with signs that iCalendar escapes, and wide ones at
// which a line may be parted only between characters.
func TestAnyNameComesBackFromTheCalendar(t *testing.T) {
	for _, name := range []string{`a; b, c \ d: "e" \n`, strings.Repeat("Größe 🌾 ", 30), "BEGIN:VEVENT"} {
		f := made(t, "pale.malt")
		f.Process.Name = name
		text := calendarOf(t, newTimetable(f, in(t, "UTC", "2026-03-06T07:00"), false))
		for _, line := range strings.Split(text, "\r\n") {
			assert.LessOrEqual(t, len(line), 75)
			assert.True(t, utf8.ValidString(line))
		}
		cal, err := ical.NewDecoder(strings.NewReader(text)).Decode()
		require.NoError(t, err)
		words, err := cal.Events()[0].Props.Text(ical.PropDescription)
		require.NoError(t, err)
		assert.Contains(t, words, "\n"+name+", 0:00 after the first soak")
	}
}
