package main

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestStartThatTheClocksLeaveOutIsRefused(t *testing.T) {
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
		{"America/New_York", "2026-03-29 02:30", "2026-03-29T02:30:00-04:00"},
		{"America/New_York", "2026-03-29T02:30:00Z", "2026-03-29T02:30:00Z"},
	} {
		zone, err := time.LoadLocation(c.zone)
		if err != nil {
			t.Skip("this machine has no table of time zones")
		}
		start, err := Forecast{Start: c.start}.start(zone)
		if c.want == "" {
			assert.ErrorContains(t, err, "the clocks are put forward over it", c.start)
			continue
		}
		require.NoError(t, err)
		assert.Equal(t, c.want, start.Format(time.RFC3339))
	}
}
