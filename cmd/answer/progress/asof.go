package progress

import (
	"time"

	"maltwright/lang/model"
)

// AsOf is why a batch is followed as of a time.
type AsOf string

// The reasons.
const (
	Asked       AsOf = "asked"
	Clock       AsOf = "now"
	LastReading AsOf = "last-reading" // which is long ago
	ClockBehind AsOf = "clock-behind" // the last reading lies ahead of the computer's clock
)

// freshFor is how long after its last reading a batch is taken to be still under way:
// the longest that any stage is left alone, and a day of forgetting.
const freshFor = 72 * time.Hour

// When is the time as of which a batch is followed where none is asked for.
func When(b *model.Batch, now time.Time) (time.Time, AsOf) {
	last := b.Began.Time
	for _, x := range b.Readings {
		if x.When().After(last) {
			last = x.When().Time
		}
	}
	switch {
	case now.Before(last):
		return last, ClockBehind
	case now.Sub(last) > freshFor:
		return last, LastReading
	}
	return now.Truncate(time.Minute), Clock
}
