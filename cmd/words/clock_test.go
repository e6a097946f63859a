package words_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/words"
)

func TestTimesOfTheClockAreToldFromNow(t *testing.T) {
	now := time.Date(2026, 3, 27, 14, 5, 0, 0, time.UTC)
	for after, want := range map[time.Duration]string{
		0: "14:05 today", 9 * time.Hour: "23:05 today", 10 * time.Hour: "00:05 tomorrow", -15 * time.Hour: "23:05 yesterday",
		48 * time.Hour: "Sun 14:05", 7 * 24 * time.Hour: "Fri 3 Apr 14:05", -72 * time.Hour: "Tue 24 Mar 14:05",
	} {
		assert.Equal(t, want, words.Clock(now.Add(after), now))
	}
	assert.Equal(t, "today, Friday 27 March", words.Day(now, now))
	assert.Equal(t, "tomorrow, Saturday 28 March", words.Day(now.Add(12*time.Hour), now))
	assert.Equal(t, "Sunday 29 March", words.Day(now.Add(48*time.Hour), now))
}

func TestAnotherZoneIsToldByTheClockOfNow(t *testing.T) {
	here := time.FixedZone("here", 3600)
	now := time.Date(2026, 3, 27, 14, 5, 0, 0, here)
	assert.Equal(t, "00:30 tomorrow", words.Clock(time.Date(2026, 3, 27, 23, 30, 0, 0, time.UTC), now))
}
