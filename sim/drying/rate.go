package drying

import (
	"errors"

	"maltwright/sim/air"
	"maltwright/sim/powers"
)

// Rate gives the drying constant k, 1/s, in dX/dt = −k·(X − Xe), of a material
// of moisture x (kg/kg dry basis, 0 to 4) at t °C (−20 to 180). Outside it
// returns a *[air.RangeError].
func Rate(m Material, x, t float64) (float64, error) {
	if err := errors.Join(m.Check(), checkMoisture(x), checkTemperature(t)); err != nil {
		return 0, err
	}
	k, _, _ := m.Rate(x, t)
	return k, nil
}

// Rate gives the drying constant k, 1/s, the house's factor included, with its
// derivatives: k = f·(kb + (kw − kb)·σ(x)). For barley kw = 139.3·exp(−4426/T)
// for free water [ocallaghan-1971], kb = π²·D/r² for bound water, D and its
// activation energy fitted (sim/outside/fit); σ is FreeWater. Water is taken up by
// the same constant: nothing that was at hand tells its own.
func (m Malt) Rate(x, t float64) (k, byX, byT float64) {
	c := m.figures()
	perTk := 1 / (t + air.ZeroCelsius)
	share, slope := m.FreeWater(x)
	free, bound := 0.0, 0.0 // one that has no share is not asked for
	if share > 0 {
		free = c.FreeRate * powers.Exp(-c.FreeFall*perTk)
	}
	if share < 1 {
		bound = c.BoundRate * powers.Exp(c.BoundFall*(1/roomT-perTk))
	}
	f := m.factor()
	return m.bent(x, f*(bound+(free-bound)*share),
		f*(free-bound)*slope,
		f*perTk*perTk*(bound*c.BoundFall*(1-share)+free*c.FreeFall*share))
}

// FreeWater gives σ, a smooth step with moisture x (kg/kg dry basis), and its
// derivative: 3u² − 2u³, u = (x − 0.124)/0.077 for barley, nil below 0.124, 1
// above 0.201.
func (m Malt) FreeWater(x float64) (share, slope float64) {
	c := m.figures()
	u := (x - c.BoundBelow) / c.Transition
	switch {
	case u <= 0:
		return 0, 0
	case u >= 1:
		return 1, 0
	}
	return u * u * (3 - 2*u), 6 * u * (1 - u) / c.Transition
}
