// Package invent makes materials that no house dries, for tests: cereals of any
// figures, and one that is no cereal at all.
package invent

import (
	"math"

	"pgregory.net/rapid"

	"maltwright/sim/air"
	"maltwright/sim/drying"
)

// Material draws a material: malt of a cereal whose figures lie up to twofold
// about barley's, or a [Clay].
func Material(t *rapid.T) drying.Material {
	if rapid.IntRange(0, 3).Draw(t, "clay") == 0 {
		return Clay{
			Holds: rapid.Float64Range(0.05, 0.6).Draw(t, "holds"),
			Pace:  math.Pow(10, rapid.Float64Range(-6, -3).Draw(t, "lg pace")),
		}
	}
	about := func(name string, figure *float64) { *figure *= math.Exp2(rapid.Float64Range(-1, 1).Draw(t, name)) }
	c := drying.Barley()
	about("K", &c.HendersonK)
	about("C", &c.HendersonC)
	c.HendersonN = rapid.Float64Range(1.8, 2.6).Draw(t, "N") // where those of the published cereals lie
	c.WetFrom, c.Steepest = 2, 60
	about("free rate", &c.FreeRate)
	about("bound rate", &c.BoundRate)
	about("bound fall", &c.BoundFall)
	about("critical moisture", &c.BoundBelow)
	about("transition", &c.Transition)
	about("dry heat", &c.DryHeat)
	about("heat of wetting", &c.WettingHeat)
	about("its fall", &c.WettingFall)
	about("diameter", &c.Packing.KernelDiameter)
	about("surface", &c.Packing.Surface)
	about("conductivity", &c.Packing.Conductivity)
	about("exposed", &c.Packing.Exposed)
	return drying.Malt{Cereal: &c}.With(new(rapid.Float64Range(0.3, 3).Draw(t, "factor")), rapid.Float64Range(-0.03, 0.03).Draw(t, "shift"))
}

// Clay is a material with the plainest of laws: the humidity at rest with it is
// 1 − exp(−X/Holds) at any temperature, it dries at one pace, and water is held
// in it by no more than its own weight.
type Clay struct {
	Holds float64 // kg/kg dry basis
	Pace  float64 // drying constant, 1/s
}

var _ drying.Material = Clay{}

// Check refuses nothing that Material draws.
func (c Clay) Check() error { return air.Within("clay", c.Holds, "kg/kg", 0.01, 1) }

// Humidity gives 1 − exp(−X/Holds) and its derivatives.
func (c Clay) Humidity(x, _ float64) (rh, byX, byT float64) {
	sign := math.Copysign(1, x)
	dry := math.Exp(-math.Abs(x) / c.Holds)
	return sign * (1 - dry), dry / c.Holds, 0
}

// Equilibrium gives the inverse of Humidity.
func (c Clay) Equilibrium(rh, _ float64) float64 { return -c.Holds * math.Log1p(-rh) }

// Wet gives the moisture at which the humidity is 1 but for 1e-5.
func (c Clay) Wet() (from, steepest float64) { return 11.6 * c.Holds, 1 / c.Holds }

// Rate gives Pace.
func (c Clay) Rate(_, _ float64) (k, byX, byT float64) { return c.Pace, 0, 0 }

// FreeWater gives all of it.
func (c Clay) FreeWater(float64) (share, slope float64) { return 1, 0 }

// DryHeat gives that of dry clay, some 900 J/(kg K).
func (c Clay) DryHeat() float64 { return 900 }

// Wetting gives none.
func (c Clay) Wetting(float64) (heat, slope float64) { return 0, 0 }

// Packing gives that of barley.
func (c Clay) Packing() drying.Packing { return drying.Malt{}.Packing() }
