// Package powers gives e^x and ln x in a third of the time that package math takes:
// the models ask for them more often than for anything else.
//
// # How it works
//
// Both read a table of 128 cells and close the rest of the way with a short
// polynomial. What is given differs from the exact value by a few units in the
// last place, which [Error] bounds and a test sweeps. Arguments out of the ordinary
// (infinite, not a number, nil or less, or so large that the result is none) are
// left to package math.
package powers

import "math"

// Error bounds the relative error of Exp, and the error of Log over the larger of its
// value and one.
const Error = 1e-15

const (
	cellBits = 7
	cells    = 1 << cellBits

	perCell = cells / math.Ln2 // cells to each unit of x
	// A cell of ln 2/128 in two parts, of which the first has so few digits that its
	// multiples are exact.
	cellHigh = 0x1.62e42fefp-8
	cellLow  = math.Ln2/cells - cellHigh

	// rounder added to a number leaves the nearest whole number in its last digits.
	rounder = 0x1.8p52

	// widest is an argument up to which e^x is an ordinary number.
	widest = 700.0
)

// Both tables are filled when the program is loaded and never change.
var (
	exps = fillExps()
	logs = fillLogs()
)

// fillExps gives the bits of 2^(i/128) for each cell.
func fillExps() *[cells]uint64 {
	t := new([cells]uint64)
	for i := range t {
		t[i] = math.Float64bits(math.Exp2(float64(i) / cells))
	}
	return t
}

// Exp gives e^x.
func Exp(x float64) float64 {
	if !(x > -widest && x < widest) {
		return math.Exp(x)
	}
	shifted := x*perCell + rounder
	k := math.Float64bits(shifted)
	whole := shifted - rounder
	r := x - whole*cellHigh - whole*cellLow // |r| ≤ ln 2/256
	r2 := r * r
	p := r + r2*(1.0/2+r*(1.0/6)) + r2*r2*(1.0/24+r*(1.0/120))
	scale := math.Float64frombits(exps[k%cells] + k>>cellBits<<exponentAt)
	return scale + scale*p
}

// exponentAt is where the exponent of a float64 begins.
const exponentAt = 52

// logCell is the reciprocal of the middle of a cell of 1 to 2, and minus its logarithm.
type logCell struct{ reciprocal, log float64 }

func fillLogs() *[cells]logCell {
	t := new([cells]logCell)
	for i := range t {
		c := 1 / (1 + (float64(i)+0.5)/cells)
		t[i] = logCell{c, -math.Log(c)}
	}
	return t
}

// Log gives ln x.
func Log(x float64) float64 {
	if !(x >= smallest && x <= math.MaxFloat64) {
		return math.Log(x)
	}
	bits := math.Float64bits(x)
	exponent := int(bits>>exponentAt) - 1023
	c := &logs[bits>>(exponentAt-cellBits)%cells]
	z := math.Float64frombits(bits&(1<<exponentAt-1) | 1023<<exponentAt) // 1 to 2
	r := z*c.reciprocal - 1                                              // |r| ≤ 1/256
	r2 := r * r
	p := r - r2*(1.0/2-r*(1.0/3)) - r2*r2*(1.0/4-r*(1.0/5)+r2*(1.0/6))
	return float64(exponent)*math.Ln2 + (c.log + p)
}

// smallest is the least number with all its digits.
const smallest = 0x1p-1022
