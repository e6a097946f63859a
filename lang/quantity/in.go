package quantity

import (
	"fmt"
	"math"
	"strconv"
)

// In gives a value in SI as a quantity in the unit, written with the digits that
// say something. Its SI is the value itself, not the rounded number. The unit must
// be of the language and the value finite, below 1e12 in the unit and, if a
// temperature, not below absolute zero; else it is an *Error.
func In(si float64, unit string) (Quantity, error) {
	u, n, err := inNamed(si, unit)
	if err != nil {
		return Quantity{}, err
	}
	return Quantity{SI: si, Dimension: u.Dimension, first: written{round(n, u.sensible(n), 0), u}}, nil
}

// Format prints a value in SI in the unit with so many digits behind the point, 0
// to 12. The errors are those of In.
func Format(si float64, unit string, decimals int) (string, error) {
	u, n, err := inNamed(si, unit)
	if err != nil {
		return "", err
	}
	decimals = max(0, min(decimals, len(tens)-1))
	return written{round(n, decimals, decimals), u}.text(), nil
}

func inNamed(si float64, unit string) (*Unit, float64, error) {
	u := &plain
	if unit != "" {
		if u = findUnit(unit); u == nil {
			return nil, 0, noUnit(0, unit)
		}
	}
	n := (si - u.Offset) / u.Factor
	text := strconv.FormatFloat(n, 'g', 4, 64)
	switch {
	case math.IsNaN(n) || math.IsInf(n, 0):
		return nil, 0, &Error{Kind: NotANumber, Message: fmt.Sprintf("%s could not be reckoned", u.Dimension.withArticle()),
			Hint: "one of the numbers it comes from is not finite"}
	case math.Abs(n) > largest:
		return nil, 0, numberError(TooLarge, 0, Part{text, u.Name})
	case u.Dimension == Temperature && si < 0:
		return nil, 0, belowZero(Part{text, u.Name})
	}
	return u, n, nil
}
