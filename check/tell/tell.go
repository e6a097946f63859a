// Package tell puts what the simulator finds into sentences: troubles, assumptions,
// cautions, and why a forecast ended. The simulator gives their figures in SI; they are
// told in the units of the house, and beside a value that the file states as it is written.
package tell

import (
	"maltwright/lang/quantity"
)

// near gives the units to tell a temperature in beside one that is written.
func near(written quantity.Quantity, units quantity.System) quantity.System {
	if written.Dimension == quantity.Temperature && written.Unit() != "" {
		units.Fahrenheit = written.Unit() == "°F"
	}
	return units
}

// surface writes the area of a floor, m².
func surface(m2 float64, units quantity.System) string {
	if units.British {
		return units.Surface(m2)
	}
	return quantity.Surface(m2)
}

// airflow writes how much air moves, m³/s.
func airflow(si float64, units quantity.System) string {
	if units.British {
		return units.Airflow(si)
	}
	return quantity.Airflow(si)
}
