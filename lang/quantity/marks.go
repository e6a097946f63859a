package quantity

import (
	"fmt"
	"math"
)

// WeightBy writes so many kg as a scale of a division of so many kg shows them, rounded
// once: 7.35 kg or 10.45 kg on one of 50 g, 130 g on one of 5 g. Of what a finer scale
// shows it writes two places behind the point, and four figures at the most: a forecast
// knows no more.
func (s System) WeightBy(kg, division float64) string {
	marks := math.Round(kg / division)
	if math.IsNaN(marks) || math.IsInf(marks, 0) {
		return s.Weight(kg)
	}
	unit, one := s.weighedIn(kg)
	shown := marks * division / one
	if s.Ounces && unit == "lb" && shown < 100 { // what is finer than a tenth of an oz no forecast knows
		if oz := division / (Pound / 16); oz < 0.1*(1-sameValue) {
			return poundsAndOunces(kg/one, 1)
		}
		return poundsAndOunces(shown, marksPlaces(division/(Pound/16), 1))
	}
	most := fourFigures(shown)
	switch unit {
	case "oz":
		most = 1
	case "g":
		most = 0
	}
	if few := min(most, 2); division/one < math.Pow10(-few)*(1-sameValue) { // the scale is finer than that
		return fmt.Sprintf("%.*f %s", few, kg/one, unit)
	}
	return fmt.Sprintf("%.*f %s", marksPlaces(division/one, most), shown, unit)
}

// weighedIn is the unit in which so many kg are written, and what one of it is in kg.
func (s System) weighedIn(kg float64) (unit string, one float64) {
	switch {
	case s.British && kg < Pound:
		return "oz", Pound / 16
	case s.British:
		return "lb", Pound
	case kg < 1:
		return "g", 1e-3
	}
	return "kg", 1
}

// fourFigures is how many of four figures stand behind the point.
func fourFigures(x float64) int {
	if x >= 1000 {
		return 0
	}
	return 1 + threeFigures(x)
}

// marksPlaces is how many places behind the point show the marks of a scale; where no number
// of them does, as of a scale of g in lb, as many as tell one mark from the next.
func marksPlaces(division float64, most int) int {
	for places := range most + 1 {
		if marks := division * math.Pow10(places); math.Abs(marks-math.Round(marks)) <= sameValue*marks {
			return places
		}
	}
	for places := range most {
		if math.Pow10(-places) <= division/5 {
			return places
		}
	}
	return min(most, 2)
}
