package grain

import "math"

const (
	// modificationScale, share of the clock to an acrospire of three quarters:
	// calibrated so that the index is 0.85, chalky, at that acrospire (common
	// practice: three quarters of a kernel is three quarters and more modified).
	modificationScale = 0.726
	// grittyFrom and chalkyFrom, modification index: calibrated.
	grittyFrom = 0.55
	chalkyFrom = 0.85
)

// Rub is what the flour of a kernel feels like between finger and thumb.
type Rub int

// The words of the rub test, in the order in which a kernel comes to them.
const (
	Gummy Rub = iota
	Gritty
	Chalky
)

// String gives the word of the rub test.
func (r Rub) String() string {
	switch r {
	case Gummy:
		return "gummy"
	case Gritty:
		return "gritty"
	case Chalky:
		return "chalky"
	}
	return "not a rub word"
}

// Modification gives the modification index, 0 (raw) to 1 (all through), at the
// growth clock, °C·h: 1 − exp(−(grown/τ)²), grown the clock since half the
// kernels chitted, τ = 0.726 of the clock to an acrospire of three quarters.
// Standing: calibrated, form and figures.
func (p *Profile) Modification(clock float64) float64 {
	grown := clock - p.Chit
	if !(grown > 0) {
		return 0
	}
	x := grown / (modificationScale * p.Marks[2])
	return -math.Expm1(-x * x)
}

// RubAt gives the word of the rub test for a modification index: gummy under
// 0.55, gritty under 0.85, chalky from there. Standing: calibrated.
func RubAt(modification float64) Rub {
	switch {
	case modification >= chalkyFrom:
		return Chalky
	case modification >= grittyFrom:
		return Gritty
	}
	return Gummy
}

// ModificationAt gives the least modification index that earns the word, the
// inverse of [RubAt].
func ModificationAt(r Rub) float64 {
	return [...]float64{Gummy: 0, Gritty: grittyFrom, Chalky: chalkyFrom}[min(max(r, Gummy), Chalky)]
}
