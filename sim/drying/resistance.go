package drying

import (
	"math"

	"maltwright/sim/air"
)

// Resistance gives the pressure that air loses in a metre of the grain, clean
// and dry, Pa/m: a·q²/ln(1 + b·q), q the speed before the bed in m³/(s m²),
// 0.0056 to 0.203 m/s, for barley a = 2.14e4, b = 13.2, [asabe-d272]. Outside
// it returns a *[air.RangeError]. Green malt has the share Loose of it.
func (p Packing) Resistance(q float64) (float64, error) {
	if err := air.Within("air speed", q, "m/s", 0.0056, 0.203); err != nil {
		return 0, err
	}
	return p.Drag * q * q / math.Log1p(p.Bend*q), nil
}
