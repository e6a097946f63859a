package value

import "time"

// Instant resolves a date and seconds from midnight to a time of the wall clock in
// the zone of this computer: the one place where a record meets a zone. An hour
// that the clock skips in spring is read as the hour after it, and one that it
// shows twice in autumn as the first.
func Instant(date time.Time, second int) time.Time {
	return time.Date(date.Year(), date.Month(), date.Day(), second/3600, second/60%60, second%60, 0, time.Local)
}

// longestGap is how far ahead a time without a date may lie of the one above. A
// night is shorter; more is rather a slip of the pen than the next day.
const longestGap = 12 * time.Hour

// Follow resolves a time without a date: on the day of the one before it, or on the
// next where it would go back and a night can lie between. It is false where
// neither can be meant.
func Follow(before time.Time, second int) (time.Time, bool) {
	if at := Instant(before, second); !at.Before(before) {
		return at, true
	}
	at := Instant(before.AddDate(0, 0, 1), second)
	return at, at.Sub(before) <= longestGap
}
