package founding

import (
	"math"
	"strconv"

	"maltwright/lang/quantity"
)

// system is the units that a house writes in.
type system struct{ british bool }

// The two choices of units.
const (
	Metric = "°C and kg"
	Pounds = "°F and lb"
)

func (s system) degree() string { return s.pick("°C", "°F") }
func (s system) pick(metric, british string) string {
	if s.british {
		return british
	}
	return metric
}

// degrees writes a temperature of °C in whole degrees of the house.
func (s system) degrees(celsius float64) string { return s.number(celsius) + " " + s.degree() }

// number is the same without the unit.
func (s system) number(celsius float64) string {
	if s.british {
		return strconv.Itoa(int(math.Round(quantity.Fahrenheit(celsius))))
	}
	return strconv.Itoa(int(math.Round(celsius)))
}

// band writes two temperatures of °C, in whole degrees of the house.
func (s system) band(low, high float64) string {
	if s.number(low) == s.number(high) {
		return s.degrees(low)
	}
	return s.number(low) + " to " + s.degrees(high)
}

// nice writes a value in SI in the unit to two figures.
func nice(si float64, unit string) string { return figures(si, unit, 2) }

// figures writes a value in SI in the unit to so many figures.
func figures(si float64, unit string, n float64) string {
	one, err := quantity.Parse("1 " + unit)
	if err != nil || one.SI == 0 {
		return ""
	}
	v := si / one.SI
	if v == 0 || math.IsInf(v, 0) || math.IsNaN(v) {
		return "0 " + unit
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(v)))+1-n)
	places := max(0, -int(math.Floor(math.Log10(step)+0.5)))
	return quantity.Rounded(math.Round(v/step)*step, places) + " " + unit
}

func (s system) mass(kg float64) string {
	if kg < 0.3 {
		return nice(kg, s.pick("g", "oz"))
	}
	if kg >= 2000 && !s.british {
		return nice(kg, "t")
	}
	return nice(kg, s.pick("kg", "lb"))
}
func (s system) volume(m3 float64) string { return nice(m3, s.pick("l", "gal-us")) }
func (s system) area(m2 float64) string   { return nice(m2, s.pick("m2", "ft2")) }
func (s system) flow(m3s float64) string  { return nice(m3s, s.pick("m3/h", "cfm")) }
func (s system) power(w float64) string {
	if w < 1000 {
		return nice(w, "W")
	}
	return nice(w, "kW")
}
