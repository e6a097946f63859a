package air

import "math"

// TableError bounds the relative difference between Saturation, which reads a
// table, and SaturationPressure, which reckons the formula. A test sweeps it.
const TableError = 5e-8

// The table has cells of half a kelvin, of which one begins at the triple point,
// so that the kink between ice and water falls between cells.
const (
	tableFrom   = triplePoint - 60
	cellsPerK   = 2
	tableCells  = 240 * cellsPerK
	cellWidth   = 1.0 / cellsPerK
	middleShift = cellWidth / 2
)

// cell is a cubic in the distance from the cell's lower edge, in cell widths.
type cell struct{ a, b, c, d float64 }

// table is filled when the program is loaded and never changes.
var table = fillTable()

func fillTable() *[tableCells]cell {
	cells := new([tableCells]cell)
	for i := range cells {
		low := tableFrom + float64(i)*cellWidth
		ice := low+middleShift < triplePoint
		p0, m0 := saturationWithSlope(low, ice)
		p1, m1 := saturationWithSlope(low+cellWidth, ice)
		m0, m1 = m0*cellWidth, m1*cellWidth
		cells[i] = cell{a: p0, b: m0, c: 3*(p1-p0) - 2*m0 - m1, d: 2*(p0-p1) + m0 + m1}
	}
	return cells
}

// Saturation gives the saturation pressure, Pa, at t °C like
// SaturationPressure, some seven times faster and unchecked: between −59.99 and
// 180.01 °C from a cubic table within the relative error TableError, elsewhere
// from the formula, which outside −100 to 200 °C means nothing.
func Saturation(t float64) float64 {
	x := (t - tableFrom) * cellsPerK
	if !(x >= 0 && x < tableCells) {
		return hylandWexler(t)
	}
	i := int(x)
	x -= float64(i)
	k := &table[i]
	return k.a + x*(k.b+x*(k.c+x*k.d))
}

// SaturationSlope gives what Saturation gives and its derivative by
// temperature, Pa/K, unchecked in the same way.
func SaturationSlope(t float64) (pressure, slope float64) {
	x := (t - tableFrom) * cellsPerK
	if !(x >= 0 && x < tableCells) {
		return saturationWithSlope(t, t <= triplePoint)
	}
	i := int(x)
	x -= float64(i)
	k := &table[i]
	return k.a + x*(k.b+x*(k.c+x*k.d)), (k.b + x*(2*k.c+x*3*k.d)) * cellsPerK
}

// boiling gives the temperature, °C, at which the saturation pressure is p Pa,
// by Newton's method on the nearly straight curve of ln p against 1/T.
func boiling(p float64) (float64, error) {
	if err := Within("vapour pressure", p, "Pa", hylandWexler(lowest), hylandWexler(highest)); err != nil {
		return 0, err
	}
	ln, ice := math.Log(p), p <= hylandWexler(triplePoint)
	u := 1 / (ZeroCelsius + 20.0)
	for range 30 {
		f, df := overWater(1 / u)
		if ice {
			f, df = overIce(1 / u)
		}
		step := (f - ln) * u * u / df // d(ln p)/du = −(d ln p/dT)/u²
		u += step
		if math.Abs(step) < 1e-15 {
			break
		}
	}
	return 1/u - ZeroCelsius, nil
}
