package quantity

import (
	"slices"
	"strings"

	"maltwright/lang/nearest"
)

// Unit is a unit of the language. The SI value of a number n in it is
// n·Factor + Offset.
type Unit struct {
	Name      string   // the spelling that is printed
	Aliases   []string // other spellings that are read
	Dimension Dimension
	Factor    float64
	Offset    float64
	Doc       string
}

// Exact factors: the inch, the pound, the gallons and the British thermal unit
// (International Table) are defined by them (NIST SP 811, appendix B).
const (
	inch      = 0.0254
	pound     = 0.45359237
	usGallon  = 3.785411784e-3
	impGallon = 4.54609e-3
	btu       = 1055.05585262
	hour      = 3600.0
	day       = 24 * hour
	fahrSize  = 5.0 / 9
	zeroC     = 273.15
	zeroF     = 459.67 * fahrSize
)

var units = []Unit{
	{"times", []string{"time", "x"}, Count, 1, 0, "how often"},
	{"corns", []string{"corn", "kernels", "grains"}, Count, 1, 0, "single corns"},
	{"%", []string{"percent", "% wet basis"}, Share, 0.01, 0, "per cent; a moisture is of the whole weight"},
	{"% dry basis", nil, DryShare, 0.01, 0, "per cent of the dry matter"},
	{"°C", []string{"C", "c", "ºC", "degC", "celsius", "Celsius", "°c"}, Temperature, 1, zeroC, "degrees Celsius"},
	{"°F", []string{"F", "ºF", "degF", "fahrenheit", "Fahrenheit", "°f"}, Temperature, fahrSize, zeroF, "degrees Fahrenheit"},
	{"K", []string{"kelvin"}, Temperature, 1, 0, "kelvin"},
	{"°C/h", []string{"C/h", "ºC/h", "K/h", "degC/h"}, TemperatureRate, 1 / hour, 0, "degrees Celsius an hour"},
	{"°F/h", []string{"F/h", "ºF/h", "degF/h"}, TemperatureRate, fahrSize / hour, 0, "degrees Fahrenheit an hour"},
	{"s", []string{"sec", "second", "seconds"}, Time, 1, 0, "seconds"},
	{"min", []string{"mins", "minute", "minutes"}, Time, 60, 0, "minutes"},
	{"h", []string{"hr", "hrs", "hour", "hours", "H"}, Time, hour, 0, "hours"},
	{"days", []string{"d", "day"}, Time, day, 0, "days"},
	{"weeks", []string{"week", "wk", "w"}, Time, 7 * day, 0, "weeks"},
	{"mg", nil, Mass, 1e-6, 0, "milligrams"},
	{"g", []string{"gr", "gram", "grams"}, Mass, 1e-3, 0, "grams"},
	{"kg", []string{"kgs", "kilo", "kilos", "kilogram", "kilograms", "Kg"}, Mass, 1, 0, "kilograms"},
	{"t", []string{"tonne", "tonnes"}, Mass, 1000, 0, "tonnes of 1000 kg"},
	{"oz", []string{"ounce", "ounces"}, Mass, pound / 16, 0, "ounces"},
	{"lb", []string{"lbs", "pound", "pounds"}, Mass, pound, 0, "pounds"},
	{"ml", []string{"mL", "millilitre", "millilitres"}, Volume, 1e-6, 0, "millilitres"},
	{"l", []string{"L", "litre", "litres", "liter", "liters"}, Volume, 1e-3, 0, "litres"},
	{"m3", []string{"m³", "m^3"}, Volume, 1, 0, "cubic metres"},
	{"gal-us", []string{"gal-US"}, Volume, usGallon, 0, "US gallons"},
	{"gal-imp", []string{"gal-uk", "gal-UK"}, Volume, impGallon, 0, "imperial gallons"},
	{"ft3", []string{"ft³", "ft^3", "cuft"}, Volume, 1728 * inch * inch * inch, 0, "cubic feet"},
	{"mm", []string{"millimetre", "millimetres"}, Length, 1e-3, 0, "millimetres"},
	{"cm", []string{"centimetre", "centimetres"}, Length, 1e-2, 0, "centimetres"},
	{"m", []string{"metre", "metres", "meter", "meters"}, Length, 1, 0, "metres"},
	{"in", []string{"inch", "inches"}, Length, inch, 0, "inches"},
	{"ft", []string{"foot", "feet"}, Length, 12 * inch, 0, "feet"},
	{"cm2", []string{"cm²", "cm^2"}, Area, 1e-4, 0, "square centimetres"},
	{"m2", []string{"m²", "m^2", "sqm"}, Area, 1, 0, "square metres"},
	{"ft2", []string{"ft²", "ft^2", "sqft"}, Area, 144 * inch * inch, 0, "square feet"},
	{"m3/h", []string{"m³/h", "m^3/h"}, Flow, 1 / hour, 0, "cubic metres an hour"},
	{"m3/s", []string{"m³/s", "m^3/s"}, Flow, 1, 0, "cubic metres a second"},
	{"l/s", []string{"L/s"}, Flow, 1e-3, 0, "litres a second"},
	{"l/min", []string{"L/min"}, Flow, 1e-3 / 60, 0, "litres a minute"},
	{"cfm", []string{"CFM", "ft3/min"}, Flow, 1728 * inch * inch * inch / 60, 0, "cubic feet a minute"},
	{"W", []string{"watt", "watts"}, Power, 1, 0, "watts"},
	{"kW", []string{"kw", "KW", "kilowatt", "kilowatts"}, Power, 1000, 0, "kilowatts"},
	{"Btu/h", []string{"BTU/h", "btu/h"}, Power, btu / hour, 0, "British thermal units an hour"},
	{"Pa", []string{"pascal"}, Pressure, 1, 0, "pascals"},
	{"kPa", nil, Pressure, 1000, 0, "kilopascals"},
	{"m/s", nil, Speed, 1, 0, "metres a second"},
}

var bySpelling = func() map[string]*Unit {
	m := make(map[string]*Unit, 4*len(units))
	for i := range units {
		m[units[i].Name] = &units[i]
		for _, a := range units[i].Aliases {
			m[a] = &units[i]
		}
	}
	return m
}()

// latin1 is the degree sign of a file that was not saved as UTF-8.
var latin1 = strings.NewReplacer("\xb0", "°")

// Lookup finds a unit by any of its spellings.
func Lookup(spelling string) (Unit, bool) {
	u := lookup(spelling)
	if u == nil {
		return Unit{}, false
	}
	return *u, true
}

func lookup(spelling string) *Unit {
	if u := bySpelling[spelling]; u != nil {
		return u
	}
	return bySpelling[latin1.Replace(spelling)]
}

// Units lists the units by dimension.
func Units() []Unit { return slices.Clone(units) }

// Nearest gives the spelling that was most likely meant.
func Nearest(spelling string) (string, bool) {
	var known []string
	for i := range units {
		known = append(append(known, units[i].Name), units[i].Aliases...)
	}
	if lower := strings.ToLower(spelling); lower != spelling && bySpelling[lower] != nil {
		return lower, true
	}
	return nearest.Word(spelling, known)
}
