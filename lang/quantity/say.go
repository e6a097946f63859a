package quantity

import (
	"fmt"
	"math"
)

// Say writes a value in SI in the unit, with the digits that say something: 130 kg,
// 0.3 h. What cannot be written so, above 1e12 or not finite, is "unknown", as of Like.
func Say(si float64, unit string) string {
	q, err := In(si, unit)
	if err != nil {
		return "unknown"
	}
	return q.String()
}

// About is Say to two figures, for what is reckoned roughly: about 5.2 m3.
func About(si float64, unit string) string {
	u, n, err := inNamed(si, unit)
	if err != nil {
		return "unknown"
	}
	n = twoFigures(n)
	return written{round(n, u.sensible(n), 0), u}.text()
}

// Depth writes how deep a bed lies, of m: 12 cm, 8 mm, 1.3 m.
func Depth(m float64) string {
	switch mm := 1000 * m; {
	case mm >= 995:
		return fmt.Sprintf("%s m", round(m, 1, 0))
	case mm < 1:
		return fmt.Sprintf("%s mm", round(mm, 2, 0))
	case mm < 20:
		return fmt.Sprintf("%s mm", round(mm, 0, 0))
	}
	return fmt.Sprintf("%s cm", round(100*m, 0, 0))
}

// Signed writes how much more a value is, to so many digits behind the point: +1.5,
// -0.3. It is "" where nothing is left of it, or where it is not finite.
func Signed(more float64, places int) string {
	text := round(more, places, places)
	switch {
	case math.IsNaN(more) || math.IsInf(more, 0), text == round(0, places, places):
		return ""
	case more > 0:
		return "+" + text
	}
	return text
}

// Rounded writes a value to so many digits behind the point at the most: 13.5, 14. There
// is no minus before nothing; what is not finite is "unknown".
func Rounded(value float64, places int) string {
	if math.IsNaN(value) || math.IsInf(value, 0) {
		return "unknown"
	}
	return round(value, places, 0)
}

// Fixed writes a value with just so many digits behind the point, and no minus before
// nothing. What is not finite is "unknown".
func Fixed(value float64, places int) string {
	if math.IsNaN(value) || math.IsInf(value, 0) {
		return "unknown"
	}
	return round(value, places, places)
}
