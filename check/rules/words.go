package rules

import (
	"fmt"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

// Hours writes a length of time: 36 s, 40 min, 9.5 h, 6.2 days.
func Hours(s float64) string { return quantity.Lasting(s) }

// lasting writes a length of time beside that of a step, as the step has it written.
func lasting(step model.Step, s float64) string {
	if step != nil && step.Ends().For != nil {
		return step.Ends().For.Lasting(s)
	}
	return Hours(s)
}

// fahrenheitMeant is the hint where a temperature in °C that no living grain bears
// would be a usual one in °F.
func fahrenheitMeant(written string, celsius float64) (hint string, ok bool) {
	const bears = 40 // °C
	meant := quantity.Celsius(celsius)
	if celsius <= bears || meant >= bears || strings.ContainsAny(written, "fF") {
		return "", false
	}
	return fmt.Sprintf("if °F was meant, write it: %s °F is %s", quantity.Rounded(celsius, 1), quantity.Rounded(meant, 1)+" °C"), true
}

// Degrees writes a temperature of t °C to a tenth, in the unit of the process: 13.5 °C.
func (c *Case) Degrees(t float64) string { return c.Process.Degrees(t, 1) }

// Percent writes a share to a tenth of a per cent: 43.8 %.
func Percent(share float64) string { return quantity.Rounded(100*share, 1) + " %" }
