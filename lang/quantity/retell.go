package quantity

import (
	"math"
	"strings"
)

// retold has, for a unit in which the texts of rules are written, that of a house which
// writes pounds and feet.
var retold = map[string]string{
	"kg": "lb", "t": "lb", "g": "oz", "m3": "ft3", "m": "ft", "cm": "in", "mm": "in", "cm2": "ft2", "m2": "ft2",
	"m3/h": "cfm", "m/s": "ft/min", "kW": "Btu/h",
}

// Retold gives a text that holds figures in °C, kg and the like with those figures in
// the units of the house: 80 to 85 °C is 176 to 185 °F. A temperature keeps its digits,
// all else is given to two figures.
func (s System) Retold(text string) string {
	if s == (System{}) {
		return text
	}
	words := strings.Split(text, " ")
	for i := 1; i < len(words); i++ {
		name := strings.TrimRight(words[i], ",;:.)")
		unit := s.other(name)
		if litres, err := Make(Part{Number: strings.TrimPrefix(words[i-1], "("), Unit: "l"}); name == "l" && unit != "" && err == nil {
			unit = s.liquid(litres.SI)
		}
		if unit == "" || !s.turn(words, i-1, name, unit) {
			continue
		}
		words[i] = unit + words[i][len(name):]
		if i > 2 && words[i-2] == "to" {
			s.turn(words, i-3, name, unit)
		}
	}
	return strings.Join(words, " ")
}

// other is the unit of the house for one that it does not write; "" where it does.
func (s System) other(name string) string {
	u := findUnit(name)
	switch {
	case u == nil:
		return ""
	case s.Fahrenheit && (u.Name == "°C" || u.Name == "°C/h"):
		return strings.Replace(u.Name, "C", "F", 1)
	case s.British && u.Name == "l":
		return s.Gallon()
	case s.British:
		return retold[u.Name]
	}
	return ""
}

// turn puts another number in the place of a word that is one, and tells whether it is.
func (s System) turn(words []string, at int, from, to string) bool {
	number := strings.TrimPrefix(words[at], "(")
	open := strings.TrimSuffix(words[at], number)
	q, err := Make(Part{Number: number, Unit: from})
	if err != nil {
		return false
	}
	u := findUnit(to)
	n := (q.SI - u.Offset) / u.Factor
	if q.Dimension == Temperature {
		words[at] = open + round(n, decimalsOf(number), 0)
		return true
	}
	n = twoFigures(n)
	words[at] = open + round(n, u.sensible(n), 0)
	return true
}

// twoFigures rounds to two figures.
func twoFigures(n float64) float64 {
	if n == 0 {
		return 0
	}
	scale := math.Pow(10, 1-math.Floor(math.Log10(math.Abs(n))))
	return math.Round(n*scale) / scale
}
