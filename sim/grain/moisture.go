package grain

import "maltwright/sim/air"

// Limits of the two moisture bases. Above 0.8 wet basis the grain would be a
// slurry, which nothing here describes.
const (
	maxWet = 0.8
	maxDry = maxWet / (1 - maxWet)
)

// WetBasis gives the moisture on the wet basis, kg of water per kg of malt: w =
// X/(1 + X), X in kg of water per kg of dry matter, 0 to 4. Outside it returns
// a *[air.RangeError].
func WetBasis(x float64) (float64, error) {
	if err := air.Within("moisture, dry basis", x, "kg/kg", 0, maxDry); err != nil {
		return 0, err
	}
	return wet(x), nil
}

// DryBasis gives the moisture on the dry basis, kg of water per kg of dry
// matter: X = w/(1 − w), w in kg of water per kg of malt, 0 to 0.8. Outside it
// returns a *[air.RangeError].
func DryBasis(w float64) (float64, error) {
	if err := air.Within("moisture, wet basis", w, "kg/kg", 0, maxWet); err != nil {
		return 0, err
	}
	return w / (1 - w), nil
}

// MoistureFromWeight gives the true moisture, wet basis, of malt that weighs
// weight and began with dry0 of dry matter, of which the share lost has gone: w
// = 1 − dry0·(1 − lost)/weight. Weights in kg, lost 0 to 0.5. It returns a
// *[air.RangeError] when lost is outside, when dry0 is not above nil, or when
// the weight is less than its own dry matter or more than five times it.
//
// Reckoning with lost = 0 is the usual slip: malt that lost 8 % of its dry
// matter then reads some 8 points too dry.
func MoistureFromWeight(weight, dry0, lost float64) (float64, error) {
	if err := air.Within("share of dry matter lost", lost, "kg/kg", 0, 0.5); err != nil {
		return 0, err
	}
	if err := air.Within("first dry matter", dry0, "kg", minMass, maxMass); err != nil {
		return 0, err
	}
	dry := dry0 * (1 - lost)
	if err := air.Within("weight", weight, "kg", dry, dry/(1-maxWet)); err != nil {
		return 0, err
	}
	return 1 - dry/weight, nil
}

func wet(x float64) float64 { return x / (1 + x) }
