package records

import (
	"fmt"
	"strings"
	"time"

	"maltwright/lang/model"
	"maltwright/sim/infer/evidence"
)

// inOrderAt says at which time a line that is out of order would be in it: in the other half
// of the day, or a day before or behind. It is "" where none is, and where the line ends a step,
// whose time the others go by.
func (r *record) inOrderAt(i int) string {
	x := r.batch.Readings[i]
	if model.After(x) != nil || model.Clean(x) || x.When().IsZero() {
		return ""
	}
	var times []string
	for _, off := range evidence.HoursOff {
		if at := x.When().Add(time.Duration(off) * time.Hour); r.fitsAmong(i, at) {
			times = append(times, at.Format("2006-01-02 15:04"))
		}
	}
	if len(times) == 0 || len(times) > 2 {
		return ""
	}
	return fmt.Sprintf("it would be in order at %s: look at the date, and whether the hour is in the morning or in the evening", strings.Join(times, ", or at "))
}

// fitsAmong tells whether a line would stand at a time between those that show less of the
// work, and those that show more: and not outside of all that is written.
func (r *record) fitsAmong(i int, at time.Time) bool {
	own, before, behind := r.shows(r.batch.Readings[i]), false, false
	for k, y := range r.batch.Readings {
		if k == i || y.When().IsZero() || r.aside[k] {
			continue
		}
		shows := r.shows(y)
		switch {
		case y.When().After(at):
			if shows != anywhere && shows < own {
				return false
			}
			behind = true
		default:
			if shows > own {
				return false
			}
			before = true
		}
	}
	return before && behind
}
