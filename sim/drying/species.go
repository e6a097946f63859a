package drying

import "math"

// barleyKernels is the weight of a thousand kernels of barley of the radius kernelRadius, kg
// (common practice). 1,340 kg/m³ makes the two agree.
const barleyKernels = 0.045

// Coefficients of the modified Henderson equation (published, recalled from memory)
// [asabe-d245], of hard wheat, yellow dent maize and sorghum.
const (
	wheatK, wheatC, wheatN       = 2.3007e-5, 55.815, 2.2857
	maizeK, maizeC, maizeN       = 8.6541e-5, 49.810, 1.8634
	sorghumK, sorghumC, sorghumN = 0.8532e-5, 113.725, 2.4757
)

// wheatRate (1/s) and wheatFall (K) give the drying constant of free water in wheat,
// k = 2000·exp(−5094/T) (published, recalled from memory) [ocallaghan-1971].
const (
	wheatRate = 2000.0
	wheatFall = 5094.0
)

// Wheat gives the figures of wheat: its own sorption and free water, and barley's where
// nothing is known.
func Wheat() Cereal {
	c := Barley()
	c.sorbs(wheatK, wheatC, wheatN)
	c.FreeRate, c.FreeFall = wheatRate, wheatFall
	return c
}

// Maize gives the figures of maize: its own sorption, and barley's.
func Maize() Cereal {
	c := Barley()
	c.sorbs(maizeK, maizeC, maizeN)
	return c
}

// Sorghum gives the figures of sorghum: its own sorption, and barley's.
func Sorghum() Cereal {
	c := Barley()
	c.sorbs(sorghumK, sorghumC, sorghumN)
	return c
}

// Weighing gives the cereal with kernels of which a thousand weigh so many kg: bound water
// goes through a sphere of that weight, and its rate with 1/r².
func (c Cereal) Weighing(thousand float64) Cereal {
	c.BoundRate *= math.Pow(barleyKernels/thousand, 2.0/3)
	return c
}

// The surface counts as wet where the exponent of the Henderson equation is wetExponent
// at coldFloor, °C, and the curve is steepest at hotFloor: the temperatures of a floor.
const (
	wetExponent         = 11.6 // 1 − RH is 1e-5
	coldFloor, hotFloor = -1.0, 60.0
)

// sorbs sets the modified Henderson equation and what follows from it. Its slope is
// greatest where the exponent is u = (N − 1)/N: 100·N·(K·(t + C))^(1/N)·u^u·exp(−u).
func (c *Cereal) sorbs(k, shift, n float64) {
	c.HendersonK, c.HendersonC, c.HendersonN = k, shift, n
	at := func(exponent, t float64) float64 { return math.Pow(exponent/(k*(t+shift)), 1/n) / 100 }
	c.Reference = at(-math.Log1p(-0.6), 20)
	c.WetFrom = at(wetExponent, coldFloor)
	u := (n - 1) / n
	c.Steepest = 1.01 * 100 * n * math.Pow(k*(hotFloor+shift), 1/n) * math.Pow(u, u) * math.Exp(-u)
}
