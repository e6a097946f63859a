package grain

import "math"

// normalError bounds the difference of normal from the standard normal integral. A test
// sweeps it.
const normalError = 3e-10

// The table of normal runs from one end to the other in cells of a sixty-fourth.
const (
	normalEnd  = 7.0 // the integral is nil and one beyond, to 2e-12
	perUnit    = 64
	normalMany = 2 * normalEnd * perUnit
)

// normals is filled when the program is loaded and never changes.
var normals = fillNormals()

// fillNormals gives for each cell the cubic in the share of it that has the value and the
// slope of the integral at both ends.
func fillNormals() *[normalMany][4]float64 {
	t := new([normalMany][4]float64)
	for i := range t {
		z := float64(i)/perUnit - normalEnd
		p0, m0 := exactNormal(z), density(z)/perUnit
		p1, m1 := exactNormal(z+1.0/perUnit), density(z+1.0/perUnit)/perUnit
		t[i] = [4]float64{p0, m0, 3*(p1-p0) - 2*m0 - m1, 2*(p0-p1) + m0 + m1}
	}
	return t
}

func exactNormal(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }

func density(z float64) float64 { return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) }

// normal is the standard normal integral, from a table within normalError.
func normal(z float64) float64 {
	x := (z + normalEnd) * perUnit
	switch {
	case !(x >= 0): // or not a number
		return exactNormal(z)
	case x >= normalMany:
		return 1
	}
	i := int(x)
	x -= float64(i)
	c := &normals[i]
	return c[0] + x*(c[1]+x*(c[2]+x*c[3]))
}
