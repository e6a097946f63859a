package air

import (
	"math"
	"strconv"
)

// figure is a value as people write it: three figures and at most four digits behind
// the point, in a unit in which it is neither thousands nor thousandths of one.
type figure struct{ number, unit string }

func (f figure) String() string {
	if f.unit == "" {
		return f.number
	}
	return f.number + " " + f.unit
}

// step is a unit to show a value in, and how much of the unit of the models it is.
type step struct {
	unit string
	size float64
}

// shown has, for a unit of the models, the units to show a value in, large ones first;
// a unit that is not there is shown as it is.
var shown = map[string][]step{
	"kg/kg":      {{"%", 0.01}},
	Share:        {{"%", 0.01}},
	"of kernels": {{"% of the kernels", 0.01}},
	"kg":         {{"t", 1000}, {"kg", 1}, {"g", 1e-3}},
	"m":          {{"m", 1}, {"cm", 0.01}, {"mm", 1e-3}},
	"m²":         {{"m2", 1}, {"cm2", 1e-4}},
	"m³/s":       {{"m3/h", 1.0 / 3600}},
	"kg/m³":      {{"kg/m3", 1}},
	"W":          {{"kW", 1000}, {"W", 1}},
	"s":          {{"days", 86400}, {"h", 3600}, {"min", 60}, {"s", 1}},
}

// figured writes a finite value of a unit of the models.
func figured(x float64, unit string) figure {
	steps := shown[unit]
	if steps == nil {
		steps = []step{{unit, 1}}
	}
	for _, s := range steps[:len(steps)-1] {
		if math.Abs(x)/s.size >= 1 {
			return figure{number(x / s.size), s.unit}
		}
	}
	last := steps[len(steps)-1]
	return figure{number(x / last.size), last.unit}
}

// Beyond most nobody reads the digits, nor below least.
const (
	mostDigits = 1e9
	places     = 4 // behind the point
	least      = 0.5e-4
)

// number writes a value to three figures and never with an exponent; whole numbers keep
// all their digits.
func number(x float64) string {
	switch size := math.Abs(x); {
	case size > mostDigits:
		return map[bool]string{true: "more than 1000000000", false: "less than -1000000000"}[x > 0]
	case x == math.Trunc(x):
		return strconv.FormatFloat(x+0, 'f', 0, 64) // -0 + 0 is 0
	case size < least:
		return "0"
	default:
		digits := max(0, min(places, 2-int(math.Floor(math.Log10(size)))))
		scale := math.Pow10(digits)
		return strconv.FormatFloat(math.Round(x*scale)/scale, 'f', -1, 64)
	}
}
