package reckon

import (
	"fmt"

	"maltwright/lang/quantity"
)

// WeightResult is what a weight says of the moisture.
type WeightResult struct {
	Moisture  float64 // wet basis, 0 to 1
	DryMatter float64 // kg left
	Water     float64 // kg
	Working   []Step
	Notes     []Note
}

// supposed is the share of dry matter lost with which the note shows what the loss
// does to the moisture: about what respiration takes of pale malt.
const supposed = 0.05

// Weight gives the moisture of a batch from its drained weight:
//
//	w = 1 − W₀·(1 − w₀)·(1 − L) / W
//
// W₀ the start weight and w₀ its moisture, W the weight now, L the share of the dry
// matter lost since, or nil for none. It returns an *Error for a weight not above
// nothing, for shares outside 0 to below 100 %, and for a weight below that of its
// own dry matter.
func Weight(now quantity.Quantity, from Start, gone *quantity.Quantity) (WeightResult, error) {
	var r WeightResult
	mass, err := weight("weight now", now)
	if err != nil {
		return WeightResult{}, err
	}
	working := steps{}
	dry, err := from.dryMatter(&working, gone)
	if err != nil {
		return WeightResult{}, err
	}
	if mass < dry*(1-roundingOfSums) {
		return WeightResult{}, &Error{fmt.Sprintf("weight now: %s is less than the dry matter alone, %s", now, now.Like(dry)),
			"weigh again, or say how much of the dry matter has been lost"}
	}
	r.DryMatter, r.Water = dry, max(mass-dry, 0)
	r.Moisture = r.Water / mass
	working.add(OfWeight{like(dry, now), given(now), percents(r.Moisture)})
	r.Working = working
	if gone == nil {
		r.Notes = []Note{Lossless{like(supposed, in("%", 0)), percents(1 - (1-supposed)*(1-r.Moisture))}}
	}
	return r, nil
}

// roundingOfSums is how far a sum of doubles may be off, as a share: a weight that
// equals its dry matter must not be refused for the last bit.
const roundingOfSums = 1e-12
