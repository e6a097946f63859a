package drying

import (
	"errors"
	"math"

	"maltwright/sim/air"
)

const (
	gas = 8.314 // gas constant, J/(mol K) (published)

	// wetRate (1/s) and wetFall (K) give the drying constant of free water,
	// k = 139.3·exp(−4426/T) (published) [ocallaghan-1971] after [boyce-1965].
	wetRate = 139.3
	wetFall = 4426.0

	// vapourDiffusion, m²/s at 20 °C, and its activation energy, J/mol, are
	// those of water vapour in malt (published) [meddings-potter-1974].
	vapourDiffusion = 1.6e-12
	vapourEnergy    = 26.0e3
	vapourAt        = 20 + air.Kelvin

	// halfThickness of the corn, m, the length that bound water has to go
	// (calibrated to the MEBAK and research kilns of the tests).
	halfThickness = 1.25e-3

	// boundBelow and freeAbove are the moistures, kg/kg dry basis, between
	// which water passes from bound to free (calibrated to the same).
	boundBelow = 0.12
	freeAbove  = 0.35
)

// boundRate is the first eigenvalue of diffusion through a sphere of radius
// halfThickness, π²·D/r², at vapourAt, 1/s.
const boundRate = math.Pi * math.Pi * vapourDiffusion / (halfThickness * halfThickness)

// Rate gives the drying constant k, 1/s, in dX/dt = −k·(X − Xe), of malt of
// moisture x (kg/kg dry basis, 0 to 4) at t °C (−20 to 180), the house's factor
// included: k = f·(kb + (kw − kb)·σ(x)), with kw = 139.3·exp(−4426/T) for free
// water [ocallaghan-1971], kb = π²·D/r² for bound water, D of
// [meddings-potter-1974], and σ a smooth step from 0 at x = 0.12 to 1 at 0.35.
// Outside it returns a *[air.RangeError].
func (m Malt) Rate(x, t float64) (float64, error) {
	if err := errors.Join(m.Check(), checkMoisture(x), checkTemperature(t)); err != nil {
		return 0, err
	}
	k, _, _ := m.RateUnchecked(x, t)
	return k, nil
}

// RateUnchecked gives what Rate gives with its derivatives by moisture and by
// temperature.
func (m Malt) RateUnchecked(x, t float64) (k, byX, byT float64) {
	perTk := 1 / (t + air.Kelvin)
	const boundFall = vapourEnergy / gas
	free := wetRate * math.Exp(-wetFall*perTk)
	bound := boundRate * math.Exp(boundFall*(1/vapourAt-perTk))
	share, slope := FreeShareUnchecked(x)
	f := m.factor()
	return f * (bound + (free-bound)*share),
		f * (free - bound) * slope,
		f * perTk * perTk * (bound*boundFall*(1-share) + free*wetFall*share)
}

// FreeShareUnchecked gives σ, the share of the drying rate that goes by the
// constant of free water at moisture x (kg/kg dry basis), and its derivative:
// 3u² − 2u³, u = (x − 0.12)/0.23, nil below 0.12, 1 above 0.35.
func FreeShareUnchecked(x float64) (share, slope float64) {
	u := (x - boundBelow) / (freeAbove - boundBelow)
	switch {
	case u <= 0:
		return 0, 0
	case u >= 1:
		return 1, 0
	}
	return u * u * (3 - 2*u), 6 * u * (1 - u) / (freeAbove - boundBelow)
}
