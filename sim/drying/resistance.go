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
	return p.drag(q), nil
}

func (p Packing) drag(q float64) float64 { return p.Drag * q * q / math.Log1p(p.Bend*q) }

// Air for which the published curve of Resistance holds: of 20 °C at sea level (handbook, from
// memory), its density, kg/m³, and viscosity, Pa s.
const (
	curveDensity   = 1.2
	curveViscosity = 1.81e-5
)

// Loss gives the pressure that air loses in a metre of green malt, Pa/m, q its speed before the
// bed, m/s: Loose times the curve of Resistance, carried to other air by Reynolds' law,
// Δp = (μ²/ρ)·F(q·ρ/μ), which is no more than that of its speed in air of its own: slow air
// loses in proportion to its viscosity, fast air to its density. Below and above the speeds of
// Resistance the curve goes on, at first in proportion to q, at last nearly to q².
func (p Packing) Loss(q float64, in air.State) float64 {
	if q <= 0 {
		return 0
	}
	rho, mu := in.Density()/curveDensity, air.Viscosity(in.T)/curveViscosity
	return p.Loose * mu * mu / rho * p.drag(q*rho/mu)
}
