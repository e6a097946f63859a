package words

import (
	"fmt"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/quantity"
)

// amount writes a figure in the unit of the value that asks for it.
func (House) amount(a outlook.Amount) string { return a.Like.Like(a.SI) }

// Setting writes where a temperature is taken and what it is: air-on 45 to 55 °C; "" where
// there is none. A °F is shown whole: a tenth of it is finer than any kiln is held.
func (h House) Setting(t *answer.Temperature) string {
	if t == nil {
		return ""
	}
	low, high := h.held(t.From), h.held(t.To)
	if low != high {
		high = low + " to " + high
	}
	return strings.TrimSpace(fmt.Sprintf("%s %s %s", t.Place, high, h.Degree()))
}

// Band writes a temperature for a table whose head has the unit: water 13, air-on 55–65.
func (h House) Band(t *answer.Temperature) string {
	if t == nil {
		return ""
	}
	from, to := h.held(t.From), h.held(t.To)
	if from == to {
		return t.Place + " " + from
	}
	return fmt.Sprintf("%s %s–%s", t.Place, from, to)
}

func (h House) held(c answer.Celsius) string {
	places := 1
	if h.Fahrenheit {
		places = 0
	}
	return quantity.Rounded(h.Temperature(float64(c)), places)
}
