package grain

import (
	"errors"
	"math"

	"maltwright/sim/air"
	"maltwright/sim/drying"
)

// Masses accepted, kg of dry matter: from a test sample to a large house's
// piece.
const (
	minMass = 1e-3
	maxMass = 1e6
)

// DefaultGermination is the share of kernels that germinates in a lot that was
// not tested. Common practice: a malting lot has at least 95 %, a good one 97.
const DefaultGermination = 0.97

// kernelExponent: uptake goes with the surface per volume, hence with weight to
// the power −2/3 (geometry: diffusion time goes with the square of the
// thickness). Standing: calibrated in form, after [mok-1983] for the core law.
const kernelExponent = 2.0 / 3

// Lot is one delivery of grain. Make one with [LotOf]: there is no field that may be
// left out.
type Lot struct {
	Profile      Profile
	DryMass      float64 // dry matter at the start, kg, 0.001 to 1e6
	Moisture0    float64 // moisture at the start, kg/kg dry basis, 0.05 to 0.55: ripe grain on the stalk
	KernelWeight float64 // of a thousand kernels, kg, 0.001 to 1
	Germination  float64 // share of kernels that germinates, above 0 to 1

	UptakeFactor      float64 // s: core uptake against the species, 0.1 to 10
	GrowthFactor      float64 // pace of the growth clock, 0.2 to 5
	RespirationFactor float64 // respiration against the species, 0.2 to 5

	Drowned float64 // share of the kernels that have drowned, 0 to 1: they neither chit nor breathe

	LateGrowth float64 // pace of the clock late beside the equation, and early its inverse, 0.2 to 5

	Forms Forms // of the equations, where they are to be other than the model's
}

// Forms gives equations another form; nil is the form that the model has. No factor can
// make up for one, so that a forecast of other forms shows how wrong an answer becomes
// where an equation is wrong. Growth and Uptake multiply a speed of the model.
type Forms struct {
	// Growth is of the growth clock, by where it stands, °C·h, and the grain's °C.
	Growth func(clock, t float64) float64
	// Uptake is of the core, by the moisture at the beginning of a soak or a rest, wet
	// basis.
	Uptake func(w float64) float64
	// Drying gives what malt of a house is on the kiln.
	Drying func(drying.Malt) drying.Material
}

// Dries is the malt of a house as it dries on the kiln.
func (l *Lot) Dries(m drying.Malt) drying.Material {
	if l.Forms.Drying == nil {
		return m
	}
	return l.Forms.Drying(m)
}

func (f Forms) growth(clock, t float64) float64 {
	if f.Growth == nil {
		return 1
	}
	return f.Growth(clock, t)
}

// UptakeForm is the form of the uptake at a moisture, wet basis: 1 for that of the model.
func (l *Lot) UptakeForm(w float64) float64 {
	if l.Forms.Uptake == nil {
		return 1
	}
	return l.Forms.Uptake(w)
}

// LotOf returns the usual lot of a species, of so much dry matter, kg, at a moisture,
// kg/kg dry basis: the kernel weight of the species, [DefaultGermination], the factors 1.
func LotOf(p Profile, dryMass, moisture0 float64) Lot {
	return Lot{Profile: p, DryMass: dryMass, Moisture0: moisture0, KernelWeight: p.KernelWeight, Germination: DefaultGermination,
		UptakeFactor: 1, GrowthFactor: 1, RespirationFactor: 1, LateGrowth: 1}
}

// HoldLoose has husk and film of the lot hold so many times what those of its species do,
// above 0: lots of one grain differ by it.
func (l *Lot) HoldLoose(factor float64) {
	l.Profile.HuskWater *= factor
	l.Profile.FilmWater *= factor
}

// ChitBy has the lot chit so many times as fast as its species, above 0: half its kernels
// have chitted at the clock of the species over the factor. What grows from there on takes
// what it took, so that it is later or sooner by that difference alone.
func (l *Lot) ChitBy(factor float64) { l.Profile.Chit /= factor }

// Check returns an error that joins a *[air.RangeError] for every field outside its
// interval.
func (l *Lot) Check() error {
	return errors.Join(
		l.Profile.check(),
		air.Within("dry matter", l.DryMass, "kg", minMass, maxMass),
		air.Within("first moisture, dry basis", l.Moisture0, "kg/kg", 0.05, 0.55),
		air.Within("weight of a thousand kernels", l.KernelWeight, "kg", 0.001, 1),
		air.Within("germination", l.Germination, "of kernels", 1e-3, 1),
		air.Within("uptake factor", l.UptakeFactor, "", 0.1, 10),
		air.Within("drowned kernels", l.Drowned, "of kernels", 0, 1),
		air.Within("growth factor", l.GrowthFactor, "", 0.2, 5),
		air.Within("respiration factor", l.RespirationFactor, "", 0.2, 5),
		air.Within("late growth", l.LateGrowth, "", 0.2, 5),
	)
}

// UptakeSpeed is the speed at which the lot's core drinks, against barley of
// the usual weight: s · uptake · (usual weight / kernel weight)^(2/3).
func (l *Lot) UptakeSpeed() float64 {
	return l.UptakeFactor * l.Profile.Uptake * math.Pow(l.Profile.KernelWeight/l.KernelWeight, kernelExponent)
}
