package main

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// worldOf is one whose clock shows a time, of a Wednesday afternoon in a zone.
func worldOf(zone *time.Location, told *strings.Builder, env map[string]string) *World {
	return &World{Err: told, Env: func(key string) string { return env[key] }, clock: func() time.Time { return time.Date(2026, 3, 4, 15, 15, 0, 0, zone) }}
}

func TestTimesOfFlagsByTheClocksOfTheZone(t *testing.T) {
	for _, c := range []struct{ zone, start, want string }{
		{"Europe/Berlin", "2026-03-29T02:30", ""},
		{"Europe/Berlin", "2026-03-29T03:00", "2026-03-29T03:00:00+02:00"},
		{"Europe/Berlin", "2026-03-29T01:59", "2026-03-29T01:59:00+01:00"},
		{"Europe/Berlin", "2026-03-29T2:30", ""},
		{"Europe/Berlin", "2026-03-29 2 am", ""},
		{"Europe/Berlin", "2026-03-06T7:00", "2026-03-06T07:00:00+01:00"},
		{"Europe/Berlin", "2026-03-06 7 am", "2026-03-06T07:00:00+01:00"},
		{"Europe/Berlin", "2026-03-06 7:30PM", "2026-03-06T19:30:00+01:00"},
		{"America/New_York", "2026-03-08 02:30", ""},
		{"America/New_York", "sun 02:30", ""},
		{"America/New_York", "2026-03-29 02:30", "2026-03-29T02:30:00-04:00"},
		{"America/New_York", "2026-03-29T02:30:00Z", "2026-03-29T02:30:00Z"},
	} {
		zone, err := time.LoadLocation(c.zone)
		if err != nil {
			t.Skip("this machine has no table of time zones")
		}
		start, err := Forecast{Start: c.start}.start(worldOf(zone, &strings.Builder{}, nil))
		if c.want == "" {
			assert.ErrorContains(t, err, "the clocks are put forward then", c.start)
			continue
		}
		require.NoError(t, err)
		assert.Equal(t, c.want, start.Format(time.RFC3339))
	}
}

func TestWhatWasUnderstoodOfATimeIsTold(t *testing.T) {
	for _, c := range []struct {
		text string
		back bool
		env  map[string]string
		want string // what is told, "" for a time that is refused
	}{
		{"fri 18:00", false, nil, "maltwright: --start fri 18:00: Fri 2026-03-06 18:00\n"},
		{"14:00", false, nil, "maltwright: --start 14:00: Thu 2026-03-05 14:00\n"},
		{"14:00", true, nil, "maltwright: --start 14:00: Wed 2026-03-04 14:00\n"},
		{"03/04/2026 07:00", false, map[string]string{"LANG": "en_GB.UTF-8"}, "maltwright: --start 03/04/2026 07:00: Fri 2026-04-03 07:00\n"},
		{"03/04/2026 07:00", false, map[string]string{"LANG": "en_GB.UTF-8", "LC_TIME": "en_US.UTF-8"}, "maltwright: --start 03/04/2026 07:00: Wed 2026-03-04 07:00\n"},
		{"03/04/2026 07:00", false, map[string]string{"LANG": "C.UTF-8"}, ""},
		{"next fri 18:00", false, nil, ""},
	} {
		var told strings.Builder
		_, err := worldOf(time.UTC, &told, c.env).said("--start", c.text, c.back)
		assert.Equal(t, c.want, told.String(), c.text)
		assert.Equal(t, c.want == "", err != nil, c.text)
		if err != nil {
			assert.ErrorContains(t, err, " or ", "both are shown")
		}
	}
	var told strings.Builder
	_, err := worldOf(time.UTC, &told, nil).said("--start", "27 Jan 2026 7h15", false)
	require.NoError(t, err)
	assert.Empty(t, told.String(), "nothing was filled in")
}

// A time in several words keeps them together without quotes.
func TestATimeNeedsNoQuotes(t *testing.T) {
	for line, want := range map[string]string{
		"forecast pale.malt --start tomorrow 7am":                   "forecast pale.malt --start [tomorrow 7am]",
		"forecast --start tomorrow 7 am pale.malt":                  "forecast --start [tomorrow 7 am] pale.malt",
		"forecast pale.malt --start=tomorrow 7am":                   "forecast pale.malt [--start=tomorrow 7am]",
		"forecast pale.malt --start in 2 h":                         "forecast pale.malt --start [in 2 h]",
		"forecast pale.malt --start 2026-03-06 14:00":               "forecast pale.malt --start [2026-03-06 14:00]",
		"forecast pale.malt --start the day after tomorrow at 7 am": "forecast pale.malt --start [the day after tomorrow at 7 am]",
		"forecast pale.malt --start 03/04/2026 7 --spread":          "forecast pale.malt --start [03/04/2026 7] --spread",
		"note b.malt --at 14:00 counted chit 84 of 100":             "note b.malt --at 14:00 counted chit 84 of 100",
		"note b.malt counted chit 84 of 100 --at 20 min ago":        "note b.malt counted chit 84 of 100 --at [20 min ago]",
		"check pale.malt --on 6 March 2026":                         "check pale.malt --on [6 March 2026]",
		"forecast pale.malt --start soon 7":                         "forecast pale.malt --start soon 7",
		"forecast --start 7am":                                      "forecast --start 7am",
		"forecast --start":                                          "forecast --start",
		"forecast -- --start tomorrow 7am":                          "forecast -- --start tomorrow 7am",
	} {
		var got []string
		for _, a := range joinTimes(strings.Fields(line)) {
			if strings.Contains(a, " ") {
				a = "[" + a + "]"
			}
			got = append(got, a)
		}
		assert.Equal(t, want, strings.Join(got, " "))
	}
}
