package quantity

import (
	"fmt"
	"math"
)

// Lengths of time are told in a unit in which they are a plain number: 40 min, not
// 0.67 h, and 24 h, not 0.14 weeks.

// Lasting writes a length of time of so many s: 36 s, 40 min, 9.5 h, 6.2 days.
func Lasting(s float64) string {
	switch {
	case math.IsNaN(s) || math.IsInf(s, 0):
		return "unknown"
	case s < 90:
		return Rounded(s, 0) + " s"
	case s < 2*hour:
		return fmt.Sprintf("%.0f min", s/minute)
	case s < 2*day:
		return fmt.Sprintf("%.1f h", s/hour)
	}
	return fmt.Sprintf("%.1f days", s/day)
}

// mostPlain is from how many of a unit on a length of time is told in a longer one.
var mostPlain = map[string]float64{"s": 120, "min": 120, "h": 100}

// Lasting writes a length of time of so many s in the unit of q where it is a plain
// number of that, and else as Lasting does: beside 8 h it is 12 h, beside 12 weeks 24 h.
func (q Quantity) Lasting(s float64) string {
	u := q.unit()
	if q.Dimension != Time || len(q.more) > 0 {
		return q.Like(s)
	}
	n, most := s/u.Factor, max(mostPlain[u.Name], 2*q.SI/u.Factor)
	if n < 1 || mostPlain[u.Name] > 0 && n > most {
		return plainly(s)
	}
	return q.Like(s)
}

// plainly is Lasting without noughts behind the point.
func plainly(s float64) string {
	for _, name := range []string{"days", "h", "min"} {
		u := findUnit(name)
		least, places := 2*u.Factor, u.sensible(s/u.Factor)
		if name == "min" {
			least, places = 1.5*u.Factor, 0
		}
		if s >= least {
			return written{round(s/u.Factor, places, 0), u}.text()
		}
	}
	return written{round(s, 0, 0), findUnit("s")}.text()
}
