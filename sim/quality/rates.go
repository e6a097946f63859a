package quality

import (
	"math"

	"maltwright/sim/air"
	"maltwright/sim/powers"
)

const (
	// betaRate, 1/s, and betaEnergy, J/mol: loss of β-amylase in wet grain
	// (published) [brandam-2003].
	betaRate, betaEnergy = 7.6e60, 410700.0
	// alphaRate, 1/s, and alphaEnergy, J/mol: the same of α-amylase (published)
	// [brandam-2003].
	alphaRate, alphaEnergy = 6.9e30, 224200.0

	// wetFrom and dryFrom, wet basis: above the one an enzyme is lost as in wet
	// grain, below the other as in dry malt, and between by the weighted geometric
	// mean of both (calibrated).
	wetFrom, dryFrom = 0.35, 0.06
	// betaDry and alphaDry, 1/s at dryT, °C, and dryEnergy, J/mol: loss in dry malt
	// (calibrated: in 4 h at 80 °C and 6 % a fifth to a quarter of the diastatic power goes and
	// a seventh of the α-amylase; an ale kiln to 95 °C keeps 40 to 60 % over all).
	betaDry, alphaDry = 1.70e-5, 1.10e-5
	dryT, dryEnergy   = 80.0, 75e3
)

// arrhenius is rate at t0 °C carried to t °C.
func arrhenius(rate, energy, t0, t float64) float64 {
	return rate * powers.Exp(-energy/air.MolarGas*(1/(t+air.ZeroCelsius)-1/(t0+air.ZeroCelsius)))
}

// wetness is how far an enzyme counts as wet: 0 in dry malt, 1 in wet grain, and
// between the fourth power of the straight line (calibrated with the figures above).
func wetness(w float64) float64 {
	line := min(1, max(0, (w-dryFrom)/(wetFrom-dryFrom)))
	return line * line * line * line
}

// enzyme is how fast one is lost: the logarithms of its rates in wet grain and in dry
// malt are straight lines of 1/T.
type enzyme struct {
	wet, wetByT float64 // ln of 1/s as T grows without end, K
	dry, dryByT float64
}

func enzymeOf(wetRate, wetEnergy, dryRate float64) enzyme {
	return enzyme{
		wet: math.Log(wetRate), wetByT: wetEnergy / air.MolarGas,
		dry: math.Log(dryRate) + dryEnergy/air.MolarGas/(dryT+air.ZeroCelsius), dryByT: dryEnergy / air.MolarGas,
	}
}

// Both are never written to.
var (
	beta  = enzymeOf(betaRate, betaEnergy, betaDry)
	alpha = enzymeOf(alphaRate, alphaEnergy, alphaDry)
)

// loss is the rate in malt of moisture w, 1/s: k_wet^θ·k_dry^(1−θ), θ the wetness.
func (e *enzyme) loss(t, w float64) float64 {
	perTk := 1 / (t + air.ZeroCelsius)
	theta := wetness(w)
	return powers.Exp(theta*(e.wet-e.wetByT*perTk) + (1-theta)*(e.dry-e.dryByT*perTk))
}

// diastaticLoss is the rate at which β-amylase is lost, 1/s, in malt of t °C and of
// moisture w, wet basis: k_wet^θ·k_dry^(1−θ), with k_wet = 7.6e60·exp(−410700/(R·T))
// [brandam-2003], k_dry = 1.70e-5 at 80 °C with 75 kJ/mol (calibrated), T in K, and
// θ = ((w − 6 %)/29 %)⁴, 0 below 6 % and 1 above 35 % (calibrated).
func diastaticLoss(t, w float64) float64 { return beta.loss(t, w) }

// alphaLoss is the rate at which α-amylase is lost, 1/s, as [diastaticLoss]:
// k_wet = 6.9e30·exp(−224200/(R·T)) [brandam-2003], k_dry = 1.10e-5 at 80 °C with 75 kJ/mol
// (calibrated).
func alphaLoss(t, w float64) float64 { return alpha.loss(t, w) }

const (
	// precursorHalf, s, at precursorT, °C, and precursorStep, K: the half-life of the
	// DMS precursor, and what doubles it (published, measured in wort)
	// [dickenson-1979] [wilson-booer-1979].
	precursorHalf, precursorT, precursorStep = 35 * minute, 100.0, 6.0
)

// PrecursorRate is the rate at which the DMS precursor is split, 1/s:
// ln 2 / (35 min·2^((100 − T)/6)), T the temperature of the malt, °C
// [dickenson-1979] [wilson-booer-1979]. Measured in wort; in malt it is an indication.
func PrecursorRate(t, _ float64) float64 {
	return math.Ln2 / precursorHalf * powers.Exp(math.Ln2/precursorStep*(t-precursorT))
}
