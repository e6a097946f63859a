package grain

import "maltwright/sim/air"

// Limits of moisture. Above 0.8 wet basis the grain would be a
// slurry, which nothing here describes.
const (
	maxWet = 0.8
	maxDry = maxWet / (1 - maxWet)
)

// DryBasis gives the moisture on the dry basis, kg of water per kg of dry
// matter: X = w/(1 − w), w in kg of water per kg of malt, 0 to 0.8. Outside it
// returns a *[air.RangeError].
func DryBasis(w float64) (float64, error) {
	if err := air.Within("moisture, wet basis", w, "kg/kg", 0, maxWet); err != nil {
		return 0, err
	}
	return w / (1 - w), nil
}
