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
	return t.Place + " " + h.ends(t)
}

// ends writes the ends of a band: 55–65, or 93 to -1 where a dash would stand beside a sign.
func (h House) ends(t *answer.Temperature) string {
	from, to := h.held(t.From), h.held(t.To)
	switch {
	case from == to:
		return from
	case strings.HasPrefix(from, "-") || strings.HasPrefix(to, "-"):
		return from + " to " + to
	}
	return from + "–" + to
}

// Given writes a temperature for a table, with what the kiln gave where that was another: air-on 84 (44). Where
// that is wider than so many columns, the place is left out.
func (h House) Given(t *answer.Temperature, given *answer.Celsius, wide int) string {
	if t == nil || given == nil {
		return h.Band(t)
	}
	came := fmt.Sprintf("%s (%s)", h.ends(t), quantity.Rounded(h.Temperature(float64(*given)), 0))
	if with := t.Place + " " + came; len([]rune(with)) <= wide {
		return with
	}
	return came
}

func (h House) held(c answer.Celsius) string {
	places := 1
	if h.Fahrenheit {
		places = 0
	}
	return quantity.Rounded(h.Temperature(float64(c)), places)
}
