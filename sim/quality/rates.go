package quality

import "math"

const (
	// betaRate, 1/s, and betaEnergy, J/mol: loss of β-amylase in wet grain
	// (published) [brandam-2003].
	betaRate, betaEnergy = 7.6e60, 410700.0
	// alphaRate, 1/s, and alphaEnergy, J/mol: the same of α-amylase (published)
	// [brandam-2003].
	alphaRate, alphaEnergy = 6.9e30, 224200.0

	// wetShield and dryShield, wet basis, and most, K: dry enzymes bear more. The
	// malt's temperature counts for so many kelvin less: none above 35 %, 26 K at
	// 6 % and below, a straight line between (calibrated to a quarter of the
	// diastatic power lost in 4 h at 80 °C and 6 %).
	wetShield, dryShield, most = 0.35, 0.06, 26.0
)

// shield is by how many kelvin dry malt is cooler for its enzymes than it is.
func shield(w float64) float64 {
	return most * min(1, max(0, (wetShield-w)/(wetShield-dryShield)))
}

// DiastaticRate is the rate at which β-amylase is lost, 1/s:
// 7.6e60·exp(−410700/(R·(T − ΔT(w)))), T in K, ΔT from 0 K above 35 % moisture to 26 K at 6 %
// [brandam-2003]; calibrated below 35 %. Any t °C and w, wet basis.
func DiastaticRate(t, w float64) float64 {
	return betaRate * math.Exp(-betaEnergy/(gas*(t-shield(w)+zeroC)))
}

// AlphaRate is the rate at which α-amylase is lost, 1/s:
// 6.9e30·exp(−224200/(R·(T − ΔT(w)))), as [DiastaticRate] [brandam-2003].
func AlphaRate(t, w float64) float64 {
	return alphaRate * math.Exp(-alphaEnergy/(gas*(t-shield(w)+zeroC)))
}

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
	return math.Ln2 / (precursorHalf * math.Exp2((precursorT-t)/precursorStep))
}

const (
	// colourRate, EBC/s at colourT, °C; colourEnergy, J/mol; colourFrom, °C (all
	// calibrated to malts in trade: pilsner 2.5–3, pale ale 5–7,
	// Munich 14–18 EBC).
	colourRate, colourT, colourEnergy = 0.30 / hour, 85.0, 120e3
	colourFrom                        = 80.0
)

// StewFactor is by how much faster malt colours once it was stewed, for then it
// holds the sugars and amino acids that colour is made of (calibrated to Munich and
// caramel malts in trade).
const StewFactor = 1.75

// ColourRate is the rate at which colour is formed, EBC/s:
// 0.30/h·exp(−(120 kJ/mol)/R·(1/T − 1/358.15)), T the temperature of the malt in K,
// above 80 °C or while it is stewed (calibrated); for malt that was stewed times [StewFactor].
func ColourRate(t float64, stewed bool) float64 {
	if t < colourFrom && !stewed {
		return 0
	}
	return colourRate * math.Exp(-colourEnergy/gas*(1/(t+zeroC)-1/(colourT+zeroC)))
}
