package quantity

import (
	"fmt"
	"math"
)

// System is the system of units in which a house writes and reads. Its zero value is
// that of °C and kg.
type System struct {
	Fahrenheit bool // °F
	British    bool // lb, ft2, cfm, gallons
	Imperial   bool // the gallons are imperial ones, not those of the US
	Ounces     bool // a weight of a lb or more is written in lb and oz
}

// Gallon is the unit in which a house of pounds measures water.
func (s System) Gallon() string {
	if s.Imperial {
		return "gal-imp"
	}
	return "gal-us"
}

// Degree is the sign of its temperatures.
func (s System) Degree() string {
	if s.Fahrenheit {
		return "°F"
	}
	return "°C"
}

// Temperature gives the number that a thermometer of the house shows at so many °C.
func (s System) Temperature(celsius float64) float64 {
	if s.Fahrenheit {
		return Fahrenheit(celsius)
	}
	return celsius
}

// Degrees writes a temperature of °C, to so many digits at the most: 13.5 °C, 56.3 °F.
func (s System) Degrees(celsius float64, places int) string {
	return Rounded(s.Temperature(celsius), places) + " " + s.Degree()
}

// DegreesBetween writes a band of temperatures of °C: 12 to 18 °C.
func (s System) DegreesBetween(low, high float64) string {
	return Rounded(s.Temperature(low), 1) + " to " + s.Degrees(high, 1)
}

// Step is how many of its degrees a K is.
func (s System) Step() float64 {
	if s.Fahrenheit {
		return FahrenheitSteps
	}
	return 1
}

// Mass is the unit of its weights, and how many of it are in a kg.
func (s System) Mass() (unit string, perKilogram float64) {
	if s.British {
		return "lb", 1 / Pound
	}
	return "kg", 1
}

// Weight writes so many kg to three figures: 834 g, 6.06 kg, 41.2 lb.
func (s System) Weight(kg float64) string {
	if s.British {
		lb := kg / Pound
		if lb < 1 {
			return fmt.Sprintf("%.1f oz", 16*lb)
		}
		if s.Ounces && lb < 100 {
			return poundsAndOunces(lb, 0)
		}
		return figures(lb) + " lb"
	}
	if kg < 1 {
		return fmt.Sprintf("%.0f g", 1000*kg)
	}
	return figures(kg) + " kg"
}

// poundsAndOunces writes so many lb with their oz, to so many places behind the point: 14 lb 8.7 oz, 5 lb.
func poundsAndOunces(lb float64, places int) string {
	whole, oz := math.Modf(lb)
	text := Fixed(16*oz, places)
	if text == Fixed(16, places) { // it rounds up to the next lb
		whole, text = whole+1, Fixed(0, places)
	}
	if text == Fixed(0, places) {
		return fmt.Sprintf("%.0f lb", whole)
	}
	return fmt.Sprintf("%.0f lb %s oz", whole, text)
}

// figures writes three of them, and all in front of the point.
func figures(x float64) string { return fmt.Sprintf("%.*f", threeFigures(x), x) }

// threeFigures is how many of them stand behind the point.
func threeFigures(x float64) int {
	switch {
	case x < 10:
		return 2
	case x < 100:
		return 1
	}
	return 0
}

// HeatEach writes heat of J for each kg of something: 2.6 kWh/kg, 1.18 kWh/lb.
func (s System) HeatEach(j float64) string {
	if s.British {
		return fmt.Sprintf("%.2f kWh/lb", j*Pound/KilowattHour)
	}
	return fmt.Sprintf("%.1f kWh/kg", j/KilowattHour)
}

// liquid is the unit for so many m³ in a house that writes gallons: a small part of a gallon
// is measured by nobody.
func (s System) liquid(m3 float64) string {
	gallon := s.Gallon()
	if u := findUnit(gallon); u == nil || m3 < u.Factor/4 {
		return "ml"
	}
	return gallon
}

// Water writes so many litres: 250 ml, 18.5 l, 4.9 gal-us.
func (s System) Water(litres float64) string {
	if s.British {
		return About(litres/1000, s.liquid(litres/1000))
	}
	switch {
	case litres < 0.1:
		return fmt.Sprintf("%.0f ml", 1000*litres)
	case litres < 100:
		return fmt.Sprintf("%.1f l", litres)
	}
	return fmt.Sprintf("%.0f l", litres)
}

// Depth writes how deep a bed of so many m lies: 12 cm, 1.3 m; 5 in, 4.2 ft.
func (s System) Depth(m float64) string {
	switch in := m / Inch; {
	case !s.British:
		return Depth(m)
	case m >= 0.995:
		return Rounded(m/Foot, 1) + " ft"
	case in < 4:
		return Rounded(in, 1) + " in"
	default:
		return Rounded(in, 0) + " in"
	}
}

// Height writes how high above the sea a place lies, of m: 350 m, 1150 ft.
func (s System) Height(m float64) string {
	if s.British {
		return About(m, "ft")
	}
	return About(m, "m")
}

// Speed writes how fast air moves, of m/s: 0.3 m/s, 59 ft/min.
func (s System) Speed(si float64) string { return s.about(si, "m/s", "ft/min") }

// Room writes what a vessel must hold, of m³: 8.2 l, 2.2 gal-us.
func (s System) Room(m3 float64) string { return s.about(m3, "l", s.liquid(m3)) }

// Area writes how large a floor is, of m²: 0.25 m2, 40 cm2, 2.7 ft2.
func (s System) Area(m2 float64) string {
	switch {
	case s.British:
		return s.AboutArea(m2)
	case m2 < 0.1:
		return Say(m2, "cm2")
	}
	return fmt.Sprintf("%s m2", round(m2, 2, 2))
}

// AboutArea writes the same roughly.
func (s System) AboutArea(m2 float64) string { return s.about(m2, "m2", "ft2") }

// Volume writes a room of so many m³, roughly.
func (s System) Volume(m3 float64) string { return s.about(m3, "m3", "ft3") }

// Airflow writes how much air moves, of m³/s: 90 m3/h, 0.4 m3/h, 53 cfm.
func (s System) Airflow(si float64) string {
	if hourly := si * hour; !s.British && hourly >= 10 {
		return fmt.Sprintf("%s m3/h", round(hourly, 0, 0))
	}
	return s.AboutAirflow(si)
}

// AboutAirflow writes the same roughly.
func (s System) AboutAirflow(si float64) string { return s.about(si, "m3/h", "cfm") }

// Pressure writes so many Pa, roughly: 380 Pa, 1.5 inches of water.
func (s System) Pressure(pa float64) string { return s.about(pa, "Pa", "inches of water") }

func (s System) about(si float64, metric, british string) string {
	if s.British {
		metric = british
	}
	return About(si, metric)
}
