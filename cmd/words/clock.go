package words

import "time"

// Clock says when something is as a timetable has it, seen from a time: 23:00 today, 06:30 tomorrow, 21:45
// yesterday, Sat 06:30, Mon 16 Mar 06:30.
func Clock(at, now time.Time) string {
	at = at.In(now.Location())
	clock := at.Format("15:04")
	switch days := day(at).Sub(day(now)).Hours() / 24; {
	case days == 0:
		return clock + " today"
	case days == 1:
		return clock + " tomorrow"
	case days == -1:
		return clock + " yesterday"
	case days > 0 && days < 7:
		return at.Format("Mon 15:04")
	}
	return at.Format("Mon 2 Jan 15:04")
}

// Day names the day of a time, seen from another: today, Friday 27 March.
func Day(at, now time.Time) string {
	at = at.In(now.Location())
	switch day(at).Sub(day(now)).Hours() / 24 {
	case 0:
		return "today, " + at.Format("Monday 2 January")
	case 1:
		return "tomorrow, " + at.Format("Monday 2 January")
	}
	return at.Format("Monday 2 January")
}
