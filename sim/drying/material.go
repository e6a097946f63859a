package drying

// Material is what lies on a kiln or a floor and dries. A material never
// changes, so that beds may share it. Its methods check nothing.
type Material interface {
	// Check returns an error unless the material can be reckoned with; a
	// figure outside its range is a *[air.RangeError].
	Check() error

	Sorption
	Kinetics
	Heat

	// Packing gives how the material lies in a bed.
	Packing() Packing
}

// Sorption is how tightly a material holds water.
type Sorption interface {
	// Humidity gives the relative humidity, 0 to 1, of air at rest with the
	// material at moisture x (kg/kg dry basis) and t °C, with its derivatives.
	// It rises with x, below x = 0 too, so that a solver may step over the edge.
	Humidity(x, t float64) (rh, byX, byT float64)

	// Equilibrium gives the moisture, kg/kg dry basis, at rest with air of
	// relative humidity rh (0 to [WetSurface]) at t °C, the inverse of Humidity.
	Equilibrium(rh, t float64) float64

	// Wet gives the moisture, kg/kg dry basis, from which the surface is wet at
	// the temperatures of a floor, and a bound of the slope of Humidity by
	// moisture there.
	Wet() (from, steepest float64)
}

// Kinetics is how fast a single layer of kernels gives up water.
type Kinetics interface {
	// Rate gives the drying constant k, 1/s, in dX/dt = −k·(X − Xe) at moisture
	// x (kg/kg dry basis) and t °C, with its derivatives.
	Rate(x, t float64) (k, byX, byT float64)

	// FreeWater gives the share of the rate, 0 to 1, that goes by the constant
	// of free water at moisture x, and its derivative.
	FreeWater(x float64) (share, slope float64)
}

// Heat is what a material holds of it.
type Heat interface {
	// DryHeat gives the specific heat of the dry matter, J/(kg K), the same at
	// all temperatures.
	DryHeat() float64

	// Wetting gives the integral heat of wetting, J per kg of dry matter, that
	// taking up water from moisture x (kg/kg dry basis) to wetness sets free,
	// and its derivative.
	Wetting(x float64) (heat, slope float64)
}

// Packing is how a material lies in a bed.
type Packing struct {
	Conductivity float64 // of a resting bed of it, W/(m K)
	Exposed      float64 // dry matter of the layer at an open face that dries first, kg/m²

	KernelDiameter float64 // of the sphere of like surface, m
	Surface        float64 // of the kernels, m² per m³ of bed

	// Drag and Bend are the coefficients of Resistance, Pa s²/m³ and m² s/m³;
	// Loose is the share of it that green malt has, loosely laid.
	Drag, Bend, Loose float64
}
