package calendar

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// drawn is some minute of the years that people plan for.
func drawn(t *rapid.T, label string) time.Time {
	const span = 80 * 365 * 24 * 60
	return time.Date(1990, 1, 1, 0, 0, 0, 0, time.UTC).Add(time.Duration(rapid.IntRange(0, span).Draw(t, label)) * time.Minute)
}

// writings are ways to write a day that can be mistaken for no other.
var writings = []func(time.Time) string{
	func(d time.Time) string { return d.Format(time.DateOnly) },
	func(d time.Time) string { return d.Format("2006/01/02") },
	func(d time.Time) string { return d.Format("2006.1.2") },
	func(d time.Time) string { return d.Format("2 Jan 2006") },
	func(d time.Time) string { return d.Format("2. January 2006") },
	func(d time.Time) string { return d.Format("02-Jan-2006") },
	func(d time.Time) string { return d.Format("January 2, 2006") },
	func(d time.Time) string { return d.Format("Jan. 2 2006") },
	func(d time.Time) string { return strings.ToUpper(d.Format("2Jan2006")) },
	func(d time.Time) string { return fmt.Sprintf("%dth of %s", d.Day(), d.Format("January 2006")) },
	func(d time.Time) string { return d.Format("20060102") },
	func(d time.Time) string { return d.Format("Monday, 2 January 2006") },
}

var clockWritings = []string{"15:04", "15.04", "15h04", "3:04 pm", "3.04PM", "15:04:05", "1504", "15 Uhr 04"}

func TestWhatIsPrintedReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := drawn(t, "time")
		day := rapid.SampledFrom(writings).Draw(t, "day")(at)
		text := day + rapid.SampledFrom([]string{" ", " at ", ", "}).Draw(t, "between") + at.Format(rapid.SampledFrom(clockWritings).Draw(t, "clock"))
		m, err := Reader{Now: drawn(t, "now"), Back: rapid.Bool().Draw(t, "back")}.One(text)
		require.NoError(t, err, text)
		assert.True(t, at.Equal(m.At), "%s is read as %s", text, m.At)
		assert.False(t, m.Filled, text)
		again, err := Reader{Now: drawn(t, "later")}.One(m.String())
		require.NoError(t, err)
		assert.True(t, at.Equal(again.At), m.String())

		iso, ok := Canonical(day)
		require.True(t, ok, day)
		assert.Equal(t, at.Format(time.DateOnly), iso)
		if LeadingDate(day, false) > 0 {
			assert.Equal(t, len(day), LeadingDate(day+" 07:00", false), "%s ends where it ends", day)
		}
	})
}

// In figures a day that could be a month, and a month that could be a day, are never read in
// one way alone.
func TestADateThatMayBeTwoIsNeverReadAsOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := drawn(t, "time")
		sep := rapid.SampledFrom([]string{"/", ".", "-"}).Draw(t, "sign")
		text := fmt.Sprintf("%d%s%d%s%d", at.Day(), sep, at.Month(), sep, at.Year())
		d, ok := ReadDate(text)
		require.True(t, ok, text)
		may := 1
		if at.Day() <= 12 && at.Day() != int(at.Month()) {
			may = 2
		}
		assert.Len(t, d.Days(), may, text)
		assert.Contains(t, d.Days(), at.Truncate(24*time.Hour))
		_, one := Canonical(text)
		assert.Equal(t, may == 1, one, text)
		list, err := Reader{Now: drawn(t, "now")}.Read(text + " 07:00")
		require.NoError(t, err)
		assert.Len(t, list, may, text)
	})
}

func TestOpenTimesLieTheWayThatIsAsked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Reader{Now: drawn(t, "now"), Back: rapid.Bool().Draw(t, "back")}
		at := drawn(t, "time")
		text := at.Format(rapid.SampledFrom([]string{"15:04", "Mon 15:04", "Monday 3:04 pm", "3:04pm monday", "2 Jan 15:04"}).Draw(t, "form"))
		m, err := r.One(text)
		if day := strings.ToLower(r.Now.Format("Mon")); r.Back && strings.Contains(strings.ToLower(text), day) && err != nil {
			later := time.Date(r.Now.Year(), r.Now.Month(), r.Now.Day(), at.Hour(), at.Minute(), 0, 0, r.Now.Location())
			require.True(t, later.After(r.Now.Add(Slack)), "only of a time ahead on such a day it is asked which one: %s", text)
			return
		}
		require.NoError(t, err, text)
		assert.True(t, m.Filled, text)
		assert.Equal(t, at.Format("15:04"), m.At.Format("15:04"), text)
		if off := m.At.Sub(r.Now); r.Back {
			assert.LessOrEqual(t, off, Slack, text)
		} else {
			assert.GreaterOrEqual(t, off, -Slack, text)
		}
		again, err := Reader{Now: drawn(t, "later")}.One(m.String())
		require.NoError(t, err)
		assert.True(t, m.At.Equal(again.At), "what is told back is the time itself")
	})
}

func TestNoTextPanics(t *testing.T) {
	parts := []string{"fri", "next", "last", "03", "/", ".", "-", " ", "2026", "Jan", "may", "7", "h", "15", "am", "pm", "noon", "T", "Z", "+01:00", "Uhr", "o'clock", "in", "ago", "today", "at", "\u00a0", "é", "th", ",", "of", "\xb0"}
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.SampledFrom(parts), 0, 8).Draw(t, "parts"), "")
		list, err := Reader{Now: drawn(t, "now")}.Read(text)
		assert.Equal(t, err == nil, len(list) > 0, text)
		_, _ = Reader{Now: now}.Day(text)
		for _, expected := range []bool{false, true} {
			assert.LessOrEqual(t, LeadingDate(text, expected), len(text))
			assert.LessOrEqual(t, LeadingClock(text, expected), len(text))
		}
	})
}
