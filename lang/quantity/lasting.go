package quantity

import (
	"fmt"
	"math"
	"strings"
)

// Lengths of time have one form wherever a person reads them: 20 s, 45 min, 7 h 30 min,
// 6 d 22 h. There are never more than two units, so that the digits are no finer than
// what a forecast knows of it: of days the hour, of hours the minute.

// Lasting writes a length of time of so many s, roughly: 36 s, 40 min, 9 h 30 min, 6 d 4 h. Of
// 1 h and more it has 5 minutes, of half a day and more the hour.
func Lasting(s float64) string {
	switch {
	case math.IsNaN(s) || math.IsInf(s, 0):
		return "unknown"
	case s < 0:
		return "-" + Lasting(-s)
	case s < hour && s >= 59.5:
		return InFull(minute * math.Round(s/minute))
	case s < 59.5:
		return Rounded(s, 0) + " s"
	case s < 12*hour-2.5*minute:
		return InFull(5 * minute * math.Round(s/(5*minute)))
	}
	return InFull(hour * math.Round(s/hour))
}

// InFull writes a length of time of so many s to the minute, as one that was set: 7 h, 1 d 30 min, 21 d;
// of less than a minute to the second.
func InFull(s float64) string {
	if s < 59.5 {
		return Rounded(s, 0) + " s"
	}
	var parts []string
	left := int(math.Round(s / minute))
	for _, u := range []struct {
		name    string
		minutes int
	}{{"d", 1440}, {"h", 60}, {"min", 1}} {
		if n := left / u.minutes; n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, u.name))
			left -= n * u.minutes
		}
	}
	return strings.Join(parts, " ")
}

// mostPlain is from how many of a unit on a length of time is told in a longer one.
var mostPlain = map[string]float64{"s": 120, "min": 120, "h": 100}

// Lasting writes a length of time of so many s in the unit of q where it is a plain
// number of that, and else as Lasting does: beside 8 h it is 12 h, beside 12 weeks 1 d.
func (q Quantity) Lasting(s float64) string {
	u := q.unit()
	if q.Dimension != Time || len(q.more) > 0 {
		return q.Like(s)
	}
	n, most := s/u.Factor, max(mostPlain[u.Name], 2*q.SI/u.Factor)
	if n < 1 || mostPlain[u.Name] > 0 && n > most {
		return Lasting(s)
	}
	return q.Like(s)
}
