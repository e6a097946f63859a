package drying

// bent applies what a house's malt dries faster by, late, than the equations have it: a
// factor v of the rate that counts in full where all water is bound and not at all where
// all of it is free,
//
//	k·(1 + (v − 1)·(1 − σ)),
//
// σ as in FreeWater, with the derivatives. A factor of the house moves both; this tells
// bound water from free.
func (m Malt) bent(x, k, byX, byT float64) (float64, float64, float64) {
	if m.Late == nil || *m.Late == 1 {
		return k, byX, byT
	}
	share, slope := m.FreeWater(x)
	more := *m.Late - 1
	f := 1 + more*(1-share)
	return k * f, byX*f - k*more*slope, byT * f
}

func (m Malt) late() float64 {
	if m.Late == nil {
		return 1
	}
	return *m.Late
}
