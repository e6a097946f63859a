package evidence

import (
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

// Number is a number that may have been meant in the place of another.
type Number struct {
	Text    string // as it would be written: 5.24 kg
	SI      float64
	Swapped bool // two neighbouring digits are the other way round; else the point is elsewhere
}

// Numbers lists what may have been meant by a quantity of one unit: with two neighbouring
// digits the other way round, then with the point elsewhere.
func Numbers(q quantity.Quantity) (list []Number) {
	number, unit, _ := strings.Cut(q.String(), " ")
	if strings.Contains(unit, " ") { // of two units
		return nil
	}
	add := func(meant string, swapped bool) {
		other, err := quantity.Make(quantity.Part{Number: meant, Unit: unit})
		if err == nil && meant != number && !slices.ContainsFunc(list, func(n Number) bool { return n.SI == other.SI }) {
			list = append(list, Number{strings.TrimSpace(meant + " " + unit), other.SI, swapped})
		}
	}
	for k := 0; k+1 < len(number); k++ {
		for _, d := range []int{1, 2} { // a point may stand between
			if k+d >= len(number) || number[k] == '.' || number[k+d] == '.' || d == 2 && number[k+1] != '.' {
				continue
			}
			b := []byte(number)
			b[k], b[k+d] = b[k+d], b[k]
			add(string(b), true)
		}
	}
	digits := strings.Replace(number, ".", "", 1)
	for k := 1; k <= len(digits)+1; k++ {
		switch {
		case k < len(digits):
			add(digits[:k]+"."+digits[k:], false)
		case k == len(digits):
			add(digits, false)
		default:
			add(digits+"0", false)
		}
	}
	return list
}

// Hours by which a time is written wrong where it was meant for the other half of the day, or
// for the day before or behind.
var hoursOff = []float64{12, -12, 24, -24}

// OtherTime seeks the time, s from the first soak, at which a reading would fit the course of
// a trial at a point of its axes, to within so many of its errors: in the other half of the
// day, or a day before or behind. It is told only where exactly one of them fits.
func (t *Trial) OtherTime(i int, z []float64, within float64) (at float64, ok bool, err error) {
	m := &t.Observations[i]
	if m.Reading.When().IsZero() || m.look < 0 {
		return 0, false, nil
	}
	var times []float64
	for _, h := range hoursOff {
		if at := t.since(m.Reading.When()) + h*hour; at >= 0 && (t.Now == 0 || at <= t.Now) {
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
		if r := m.Residual(m.expectOf(&seen[k], t.Offset(z))); r <= within && r >= -within {
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
