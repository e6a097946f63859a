package grain

import (
	"math"

	"maltwright/sim/air"
	"maltwright/sim/drying"
)

// Kernels are those that meet some air: at an open face those that dry first. Make them
// with [KernelsOf].
type Kernels struct {
	Dry float64 // their dry matter, kg, or kg/m²

	material drying.Material
	wetFrom  float64 // moisture from which their surface is wet, see [drying.Sorption]
	damp     float64 // moisture at rest with air of dampAir
	slowest  float64 // 1/s, below the drying constant of wet kernels on any floor
}

// SupplyTime, s: in which the bed below makes good what the layer at an open face is
// short of; calibrated to withering in 12–36 h (common practice).
const SupplyTime = 6 * 3600.0

// dampAir: below its humidity the kernels hold back for the most part, above it the air.
const dampAir = 0.8

// coldFloor, °C: no bed is colder.
const coldFloor = -1.0

// KernelsOf are kernels of a material, without any weight yet.
func KernelsOf(material drying.Material) Kernels {
	c := Kernels{material: material}
	c.wetFrom, _ = material.Wet()
	c.damp = material.Equilibrium(dampAir, 20)
	k, _, _ := material.Rate(c.wetFrom, coldFloor) // wet kernels dry by one constant, which rises with warmth
	c.slowest = 0.9 * k
	return c
}

// Of are so much of the kernels, kg of dry matter, or kg/m².
func (c Kernels) Of(dry float64) Kernels {
	c.Dry = dry
	return c
}

// Draw is how air takes vapour from a surface of the saturation pressure Saturated,
// Pa: Carries·(w − W), kg/s or kg/(m² s) as Dry is, w the humidity ratio at the surface.
type Draw struct {
	Carries, W float64
	Saturated  float64
	Pressure   float64 // of the air, Pa
}

// mostVapour, of the pressure: in thin air warm grain would boil, which no bed does.
const mostVapour = 0.9

// givesNear: a Newton step of less of the flux than that is the last, and leaves an
// error of some givesNear² of it.
const givesNear = 1e-4

// Activity gives the relative humidity in balance with kernels of moisture x, kg/kg
// dry basis, and t °C, 0 to 1, by their sorption, and its slope by moisture. From
// that of a wet surface on it is 1.
func (c *Kernels) Activity(x, t float64) (activity, byX float64) {
	if x >= c.wetFrom {
		return 1, 0
	}
	activity, byX, _ = c.material.Humidity(x, t)
	return activity, byX
}

// Give is what kernels of moisture x, kg/kg dry basis, and t °C give, of the most that
// the air would take if their surface were as moist as they are. Water comes to the
// surface at k·(x − xs)·Dry, k of [drying.Kinetics], and leaves it as d says; the two
// in series settle xs, the moisture of the surface. Dew, below nil, need not pass into
// the kernel, and nothing holds it. Beside it stands the share of a small change of the
// air that comes through, 1 where the air alone limits.
func (c *Kernels) Give(x, t float64, d *Draw, most float64) (flux, share float64) {
	if most <= 0 || c.Surely(x, most) {
		return most, 1
	}
	return c.GiveOf(c.Supply(x, t), x, t, d, most)
}

// Surely tells of kernels of moisture x, kg/kg dry basis, that they give the most that the
// air would take on any floor, which spares asking for their supply.
func (c *Kernels) Surely(x, most float64) bool { return x-most/(c.slowest*c.Dry) >= c.wetFrom }

// Supply is what comes to the surface of kernels of moisture x, kg/kg dry basis, and t °C,
// kg/s or kg/(m² s) as Dry is, for each kg/kg by which that is drier.
func (c *Kernels) Supply(x, t float64) float64 {
	k, _, _ := c.material.Rate(x, t)
	return k * c.Dry
}

// GiveOf is [Kernels.Give] where the supply is known and most is above nil.
func (c *Kernels) GiveOf(supply, x, t float64, d *Draw, most float64) (flux, share float64) {
	if x-most/supply >= c.wetFrom {
		return most, 1
	}
	low, high := 0.0, most
	if flux = most / 2; x > c.damp {
		flux = math.Min(most, supply*(x-c.damp))
	}
	for range 60 {
		activity, byX := c.Activity(x-flux/supply, t)
		over, bend := d.at(activity)
		over -= flux
		share = 1 / (1 + bend*byX/supply)
		if over > 0 {
			low = flux
		} else {
			high = flux
		}
		next := flux + over*share
		if math.Abs(next-flux) <= givesNear*most {
			return math.Min(most, math.Max(0, next)), share
		}
		if next <= low || next >= high {
			next = (low + high) / 2
		}
		flux = next
	}
	return flux, share
}

// at is what the air takes of a surface of so much activity, and its slope.
func (d *Draw) at(activity float64) (taken, slope float64) {
	p := min(activity*d.Saturated, mostVapour*d.Pressure)
	dry := d.Pressure - p
	return d.Carries * (air.MassRatio*p/dry - d.W), d.Carries * air.MassRatio * d.Pressure * d.Saturated / (dry * dry)
}

// Gives is what kernels at the face, of moisture x, kg/kg dry basis, and t °C, give off
// to it, kg/(m² s): by [Face.Evaporation], less back, which the air right over the
// face holds against it, as far as the kernels give it; and the share beside it.
func (f *Face) Gives(c *Kernels, x, t, back float64) (flux, share float64) {
	activity, _ := c.Activity(x, t)
	most := f.Evaporation(t, activity) - back
	d := Draw{Carries: f.mass, W: f.room.W + back/f.mass, Saturated: air.Saturation(t), Pressure: f.room.P}
	return c.Give(x, t, &d, most)
}
