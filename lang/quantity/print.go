package quantity

import (
	"math"
	"strconv"
	"strings"
)

// Like prints a value of q's dimension, given in SI, in the unit in which q was
// written and with about as many digits: with q = 62 °F, 287.04 K is "57 °F".
func (q Quantity) Like(si float64) string {
	u := q.unit()
	n := q.inUnit(si, u)
	if len(q.more) > 0 {
		return q.likeParts(si)
	}
	return printNumber(n, max(decimalsOf(q.first.Number), sensible(n, u))) + suffix(u.Name)
}

// inUnit converts from SI to the unit, minding that the dimension may have been
// changed by As.
func (q Quantity) inUnit(si float64, u *Unit) float64 {
	switch {
	case q.Dimension == TemperatureDifference:
		return si / u.Factor
	case u.Dimension == DryShare && q.Dimension == Share:
		si = si / (1 - si)
	case u.Dimension == Share && q.Dimension == DryShare:
		si = si / (1 + si)
	}
	return (si - u.Offset) / u.Factor
}

// likeParts prints 5 lb 4.2 oz: whole larger units, the rest in the last.
func (q Quantity) likeParts(si float64) string {
	parts := append([]Part{q.first}, q.more...)
	sign := ""
	if si < 0 {
		sign, si = "-", -si
	}
	var out []string
	for i, p := range parts {
		u := bySpelling[p.Unit]
		n := si / u.Factor
		if i == len(parts)-1 {
			out = append(out, printNumber(n, max(decimalsOf(p.Number), sensible(n, u)))+suffix(u.Name))
			break
		}
		whole := math.Floor(n)
		si -= whole * u.Factor
		if whole > 0 || len(out) > 0 {
			out = append(out, printNumber(whole, 0)+suffix(u.Name))
		}
	}
	return sign + strings.Join(out, " ")
}

// sensible is the number of digits behind the point with which a value is shown:
// about three figures, a tenth of a degree or of a per cent.
func sensible(n float64, u *Unit) int {
	switch {
	case u.Dimension == Temperature || u.Dimension == Share || u.Dimension == DryShare:
		return 1
	case u.Dimension == Count:
		return 0
	}
	switch n = math.Abs(n); {
	case n == 0 || n >= 100:
		return 0
	case n >= 10:
		return 1
	case n >= 1:
		return 2
	}
	return 3
}

func printNumber(n float64, digits int) string {
	text := strconv.FormatFloat(n, 'f', digits, 64)
	if strings.Contains(text, ".") && math.Abs(n) >= 10 {
		text = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
	}
	if strings.Trim(text, "-0.") == "" {
		text = strings.TrimPrefix(text, "-")
	}
	return text
}

func suffix(unit string) string {
	if unit == "" {
		return ""
	}
	return " " + unit
}

// Of makes a quantity of a value in SI, written in the unit with so many digits
// behind the point. The unit must be of the language, or it is an *Error.
func Of(si float64, unit string, digits int) (Quantity, error) {
	u := lookup(unit)
	if u == nil {
		return Quantity{}, unknownUnit(0, unit)
	}
	return Make(Part{strconv.FormatFloat((si-u.Offset)/u.Factor, 'f', digits, 64), unit})
}
