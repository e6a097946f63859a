package evidencetest

import (
	"math"

	"maltwright/sim/drying"
	"maltwright/sim/grain"
)

// OtherForms are equations of another form than those of the model, each of a size that
// real grain might well have: the model cannot meet them by any of its factors. A truth
// that comes from the equations by which it is sought shows only that the sums are right.
//
// Growth: the clock of the model runs by temperature and moisture alone. Here it runs a
// quarter faster when the kernels begin to chit and a quarter slower once the acrospire is
// at three quarters, 1944 °C·h on, as where the embryo runs out of what it lives on, and
// by exp(0.04·(t − 15)) more with the warmth, a Q₁₀ half as high again. Over a whole
// growth at 15 °C it takes 2 % longer than the model.
//
// Uptake: the core of the model drinks as water diffuses into a sphere, at the same speed
// however wet it is. Here it slows down as it fills: a third faster in dry grain, as fast
// as the model at 36 % and a tenth slower at 43 %.
//
// Drying: malt of the model has one rate as long as its water is free and a ninth of it
// once all is bound. Here it dries by Page's equation, at seven tenths of the speed when
// green and at twice the speed at 10 %; see [Page].
func OtherForms() grain.Forms {
	return grain.Forms{
		Growth: func(clock, t float64) float64 {
			return (1.25 - 0.5*math.Min(clock/1944, 1)) * math.Exp(0.04*(t-15))
		},
		Uptake: func(w float64) float64 { return 1.5 - 1.4*w },
		Drying: func(m drying.Malt) drying.Material { return Page{m} },
	}
}
