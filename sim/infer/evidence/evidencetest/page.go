package evidencetest

import (
	"math"

	"maltwright/sim/air"
	"maltwright/sim/drying"
)

// Page is malt that dries by Page's equation and not by that of the model: in a thin
// layer the share of the water that is left after the time t is exp(−K·tⁿ)
// [page-1949]. Its rate falls from the first hour on, as n is below 1; the model has one
// constant for free water, another for bound water and a step between. All else, the
// factor of the house too, is as in the Malt. The figures are invented.
type Page struct{ drying.Malt }

const (
	pageExponent = 0.52
	pageFirst    = 1.0     // kg/kg dry basis, of which shares are taken
	pageLeast    = 0.1     // of the logarithm of the share, so that malt as wet as pageFirst has a rate
	pageBone     = 1e-3    // kg/kg dry basis, below which the rate stays
	pageAt60     = 1.03e-4 // 1/s, at 60 °C and a logarithm of 1
	pageFall     = 3800.0  // K
	pageTk       = 60 + air.ZeroCelsius
)

// Rate gives the drying constant k, 1/s, in dX/dt = −k·(X − Xe), and its derivatives:
// Page's equation without its time, with the equilibrium left out of the share,
//
//	k = f·k60·exp(3800·(1/333.15 − 1/T))·ln(1/X)^(1 − 1/n), n = 0.52
//
// for X of 0.001 to 0.9 kg/kg, and outside as at the edge. At 60 °C it is seven
// tenths of that of the model in green malt and twice it at 10 %.
func (p Page) Rate(x, t float64) (k, byX, byT float64) {
	const power = 1 - 1/pageExponent
	f := 1.0
	if given := p.Factor; given != nil {
		f = *given
	}
	tk := t + air.ZeroCelsius
	k = f * pageAt60 * math.Exp(pageFall*(1/pageTk-1/tk))
	left := math.Log(pageFirst / max(x, pageBone))
	if left <= pageLeast {
		left = pageLeast
	} else if x > pageBone {
		byX = -k * power * math.Pow(left, power-1) / x
	}
	k *= math.Pow(left, power)
	return k, byX, k * pageFall / (tk * tk)
}
