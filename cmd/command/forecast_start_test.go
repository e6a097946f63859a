package command

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/forecast"
)

func TestStartThatTheClocksLeaveOutIsRefused(t *testing.T) {
	for _, c := range []struct{ zone, start, want string }{
		{"Europe/Berlin", "2026-03-29T02:30", ""},
		{"Europe/Berlin", "2026-03-29T03:00", "2026-03-29T03:00:00+02:00"},
		{"Europe/Berlin", "2026-03-29T01:59", "2026-03-29T01:59:00+01:00"},
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

func TestClockAndElapsedTimeRoundAlike(t *testing.T) {
	start := time.Date(2026, 3, 6, 7, 0, 0, 0, time.UTC)
	p := &sheet{start: &start}
	for _, seconds := range []float64{0, 29, 31, 3599, 3629.6, 86369} {
		_, clock, _ := strings.Cut(p.clock(forecast.Step{End: seconds}), " ")
		at, err := time.Parse("15:04", clock)
		require.NoError(t, err)
		since := at.Hour()*60 + at.Minute() - 7*60
		assert.Equal(t, elapsed(seconds), elapsed(60*float64((since+1440)%1440)), "%v s", seconds)
	}
}
