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

// What malt is coloured by are its sugars and amino acids, which heat joins: there are the more
// of them the further it is modified and the longer it was stewed, and they meet the more
// easily the more water is left.
const (
	// colourRate, EBC/s at colourT, °C, in chalky malt of dryFrom, and colourEnergy, J/mol
	// (calibrated to malts in trade: pilsner 2.5–3, pale ale 5–7 EBC; the energy from memory, 100 to
	// 130). It rises with the square of the moisture (fitted: malt that was dried first
	// colours from 110 °C on, wet malt from 80) [inns-2007].
	colourRate, colourT, colourEnergy = 0.23 / hour, 85.0, 120e3

	// colourFull, wet basis: with more water colour forms no faster (calibrated: such reactions
	// are fastest where water is no longer scarce, handbook, from memory).
	colourFull = 0.20

	// colourModified is the modification, 0 to 1, of the malt for which colourRate stands
	// (calibrated: chalky malt).
	colourModified = 0.85

	// colourMost, EBC, is that of the blackest malt, to which colour tends (calibrated: 1200 to
	// 1600 in trade, from memory).
	colourMost = 1500.0

	// stewRate, 1/h for each K above stewFrom, °C: how fast enzymes make sugars and amino acids
	// of what malt has, in malt that is stewed; stewGain, by how much faster it colours for all
	// of them (calibrated to Munich malt, 14–18 EBC in trade).
	stewRate, stewFrom = 0.02, 30.0
	stewGain           = 15.0

	// stewDry and stewWet, wet basis: below the one nothing is made, above the other as much
	// as can be (calibrated).
	stewDry, stewWet = 0.30, 0.40
)

// colouring is the rate at which colour is formed, EBC/s, in chalky malt of t °C and of moisture w,
// wet basis, that was not stewed: 0.23/h·(w/6 %)²·exp(−(120 kJ/mol)/R·(1/T − 1/358.15)), w no more
// than 20 %, T in K (calibrated). See [State.Step].
func colouring(t, w float64) float64 {
	wet := min(w, colourFull) / dryFrom
	return wet * wet * arrhenius(colourRate, colourEnergy, colourT, t)
}

// stewing is the rate at which malt of t °C and moisture w, wet basis, gains what it has yet to
// gain by stewing, 1/s: 0.02/h for each K above 30 °C over 40 %, none below 30 %, in proportion
// between (calibrated).
func stewing(t, w float64) float64 {
	return stewRate / hour * max(0, t-stewFrom) * min(1, max(0, (w-stewDry)/(stewWet-stewDry)))
}
