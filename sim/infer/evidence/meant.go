package evidence

import (
	"math"
	"slices"

	"maltwright/sim/forecast"
)

// HoursOff are the hours by which a time is written wrong where it was meant for the other half
// of the day, or for the day before or behind.
var HoursOff = []int{12, -12, 24, -24}

// clearly is how near, in its errors, a reading must come by another time.
const clearly = 1.5

// OtherTime seeks the time, s from the first soak, at which a reading would fit the course of
// a trial at a point of its axes clearly: in the other half of the day, or a day before or
// behind. It is told only where exactly one of them fits.
func (t *Trial) OtherTime(i int, z []float64) (at float64, ok bool, err error) {
	m := &t.Observations[i]
	if m.Reading.When().IsZero() || m.look < 0 {
		return 0, false, nil
	}
	var times []float64
	for _, h := range HoursOff {
		if at := t.since(m.Reading.When()) + float64(h)*hour; at >= 0 && (t.Now == 0 || at <= t.Now) {
			times = append(times, at)
		}
	}
	slices.Sort(times)
	seen, err := t.looked(z, times)
	if err != nil {
		return 0, false, err
	}
	fits := 0
	for k := range seen {
		if r := m.Residual(m.expectOf(&seen[k], t.Offset(z))); math.Abs(r) <= clearly {
			at = times[k]
			fits++
		}
	}
	return at, fits == 1, nil
}

// looked is what a forecast sees at other times than those of the record.
func (t *Trial) looked(z, times []float64) ([]forecast.Sight, error) {
	o, c := t.Options(z), t.course
	c.Looks, c.Brief = times, true
	o.Meter, o.Course = t.Meter(), &c
	f, err := forecast.Run(t.Process, o)
	if err != nil {
		return nil, err
	}
	return f.Seen, nil
}
