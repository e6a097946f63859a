package kiln

import (
	"math"

	"maltwright/sim/air"
)

// Coefficients of barley (published) [asabe-d272]: Pa s²/m³ and m² s/m³.
const (
	resistanceA = 2.14e4
	resistanceB = 13.2
)

// WetResistance is the share of the resistance of clean dry grain that loosely
// laid wet grain has (handbook, from memory: 20 % less) [asabe-d272].
const WetResistance = 0.8

// Resistance gives the pressure that air loses in a metre of clean dry barley,
// Pa/m: a·q²/ln(1 + b·q), q the speed before the bed in m³/(s m²), a = 2.14e4,
// b = 13.2, [asabe-d272], 0.0056 to 0.203 m/s. Outside it returns a
// *[air.RangeError]. Take it times WetResistance for green malt.
func Resistance(q float64) (float64, error) {
	if err := air.Within("air speed", q, "m/s", 0.0056, 0.203); err != nil {
		return 0, err
	}
	return resistanceA * q * q / math.Log1p(resistanceB*q), nil
}

// PressureDrop gives the pressure, Pa, that the kiln's own airflow loses in the
// bed laid with green malt: Resistance·WetResistance·Depth. Outside the speeds
// of Resistance it returns a *[air.RangeError].
func (b *Bed) PressureDrop() (float64, error) {
	perMetre, err := Resistance(b.kit.Airflow / b.kit.Area)
	return perMetre * WetResistance * b.depth, err
}
