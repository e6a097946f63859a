// Package answer holds the figures that answers are made of. Each package below it
// answers one question with a plain struct: figures in SI, kinds and names, no prose and
// nothing about where it is written. The packages of cmd/write write such a struct;
// package words puts it into sentences.
//
// A figure has a type of its own for each unit, so that none stands where another
// belongs, and so that what is written for programs carries the unit in its key. A figure
// that is not known is NaN.
package answer

import (
	"math"

	"maltwright/lang/quantity"
)

// Unit is how a kind of figure is written for programs.
type Unit struct {
	Key    string  // the ending of its key, such as h; "" for a bare number
	Doc    string  // the unit in words
	SI     float64 // what one of it is in SI
	Digits int     // behind the point
}

// Figure is a number, or a struct of numbers, of one unit.
type Figure interface{ Unit() Unit }

// Single is a kind of figure that is one number.
type Single interface {
	~float64
	Figure
}

// Seconds is a time, or a length of it, s.
type Seconds float64

// Share is a part of a whole, of 1.
type Share float64

// Celsius is a temperature, °C.
type Celsius float64

// Kelvin is a difference of temperatures, K.
type Kelvin float64

// Kilograms is a mass, kg.
type Kilograms float64

// Litres is a volume of water, l.
type Litres float64

// Metres is a length, m.
type Metres float64

// Joules is heat, J.
type Joules float64

// Watts is power, W.
type Watts float64

// Flow is air that moves, m³/s.
type Flow float64

// Colour is the colour of malt, EBC units.
type Colour float64

// DiastaticPower is that of malt, °WK.
type DiastaticPower float64

// Concentration is what is dissolved, kg/m³.
type Concentration float64

// Content is what is in malt, kg/kg, and so is Trace, of much less.
type (
	Content float64
	Trace   float64
)

// Number is a bare number: a length in kernels, a factor.
type Number float64

// Unit is that of hours.
func (Seconds) Unit() Unit { return Unit{"h", "hours", 3600, 3} }

// Unit is that of per cent.
func (Share) Unit() Unit { return Unit{"pct", "per cent", 0.01, 2} }

// Unit is that of °C.
func (Celsius) Unit() Unit { return Unit{"c", "°C", 1, 1} }

// Unit is that of K.
func (Kelvin) Unit() Unit { return Unit{"k", "K", 1, 2} }

// Unit is that of kg.
func (Kilograms) Unit() Unit { return Unit{"kg", "kg", 1, 3} }

// Unit is that of litres.
func (Litres) Unit() Unit { return Unit{"l", "litres", 1, 1} }

// Unit is that of m.
func (Metres) Unit() Unit { return Unit{"m", "m", 1, 3} }

// Unit is that of kWh.
func (Joules) Unit() Unit { return Unit{"kwh", "kWh", quantity.KilowattHour, 2} }

// Unit is that of W.
func (Watts) Unit() Unit { return Unit{"w", "W", 1, 1} }

// Unit is that of m3/h.
func (Flow) Unit() Unit { return Unit{"m3_h", "m3/h", 1.0 / 3600, 1} }

// Unit is that of EBC units.
func (Colour) Unit() Unit { return Unit{"ebc", "EBC units", 1, 1} }

// Unit is that of °WK.
func (DiastaticPower) Unit() Unit { return Unit{"wk", "°WK", 1, 0} }

// Unit is that of mg/l.
func (Concentration) Unit() Unit { return Unit{"mg_l", "mg/l", 1e-3, 0} }

// Unit is that of mg/kg.
func (Content) Unit() Unit { return Unit{"mg_kg", "mg/kg", 1e-6, 3} }

// Unit is that of µg/kg.
func (Trace) Unit() Unit { return Unit{"ug_kg", "µg/kg", 1e-9, 2} }

// Unit is that of a bare number.
func (Number) Unit() Unit { return Unit{"", "a number", 1, 3} }

// Written is the figure as it stands for programs, rounded; false where it is not known.
func Written(si float64, u Unit) (float64, bool) {
	if math.IsNaN(si) || math.IsInf(si, 0) {
		return 0, false
	}
	scale := math.Pow(10, float64(u.Digits))
	return math.Round(si/u.SI*scale)/scale + 0, true // without a minus before nothing
}

// Spread is what many forecasts give for one figure: below P10 lies one in ten, below P90
// nine in ten. Share are those of them that have the figure.
type Spread[T Figure] struct {
	P10, P50, P90 T
	Share         Share `json:"share_pct"` // so that it ends in its unit in a spread of shares too
}

// Unit is that of its points.
func (Spread[T]) Unit() Unit {
	var one T
	return one.Unit()
}

// Temperature is the band or the rise of a temperature, and where it is taken.
type Temperature struct {
	Place    string
	From, To Celsius
}

// Unit is that of its ends.
func (Temperature) Unit() Unit { return Celsius(0).Unit() }

// Told is what package words puts into a sentence: a task, a doubt, a trouble, with its
// values. Those who write an answer ask it for the words.
type Told interface{ Told() }
