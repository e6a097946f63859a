package rules

import (
	"fmt"
	"math"
	"strings"
)

// Hours writes a length of time: 40 min, 9.5 h, 6.2 days.
func Hours(s float64) string {
	switch {
	case s < 90*60:
		return fmt.Sprintf("%.0f min", s/60)
	case s < 48*3600:
		return fmt.Sprintf("%.1f h", s/3600)
	}
	return fmt.Sprintf("%.1f days", s/86400)
}

// fahrenheitMeant is the hint where a temperature in °C that no living grain bears
// would be a usual one in °F.
func fahrenheitMeant(written string, celsius float64) (hint string, ok bool) {
	const bears = 40 // °C
	meant := (celsius - 32) / 1.8
	if celsius <= bears || meant >= bears || strings.ContainsAny(written, "fF") {
		return "", false
	}
	return fmt.Sprintf("if °F was meant, write it: %.4g °F is %s", celsius, Degrees(meant)), true
}

// Degrees writes a temperature to a tenth: 13.5 °C.
func Degrees(t float64) string { return fmt.Sprintf("%.4g °C", math.Round(10*t)/10) }

// Percent writes a share to a tenth of a per cent: 43.8 %.
func Percent(share float64) string { return fmt.Sprintf("%.4g %%", math.Round(1000*share)/10) }
