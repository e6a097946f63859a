package reckon

import "maltwright/lang/quantity"

// Start is a batch as it was weighed first.
type Start struct{ Weight, Moisture quantity.Quantity }

// TargetResult is the weight at which a batch holds the wanted moisture, in kg.
type TargetResult struct {
	Weight    float64
	DryMatter float64 // what is left of it
	Change    float64 // weight to gain, or below 0 to lose
	Working   []Step
}

// Target gives the weight to wait for:
//
//	weight = W₀·(1 − w₀)·(1 − L) / (1 − w)
//
// W₀ the start weight and w₀ its moisture, w the moisture wanted, each on either
// basis, L the share of the dry matter lost on the way, or nil for none. It serves
// the steep, where the weight rises, and the kiln, where it falls. It returns an
// *Error for a weight not above nothing and for shares outside 0 to below 100 %.
func Target(from Start, wanted quantity.Quantity, gone *quantity.Quantity) (TargetResult, error) {
	var r TargetResult
	working := steps{}
	dry, err := from.dryMatter(&working, gone)
	if err != nil {
		return TargetResult{}, err
	}
	w, err := moisture("wanted moisture", wanted)
	if err != nil {
		return TargetResult{}, err
	}
	r.DryMatter, r.Weight = dry, dry/(1-w)
	r.Change = r.Weight - from.Weight.SI
	at := working.wet(wanted)
	weight := like(r.Weight, from.Weight)
	working.add(WeightAt{like(dry, from.Weight), at, weight},
		Change{given(from.Weight), weight, like(abs(r.Change), from.Weight), percents(abs(r.Change) / from.Weight.SI)})
	r.Working = working
	return r, nil
}

// dryMatter is the dry matter the batch has left, in kg, with its working.
func (s Start) dryMatter(to *steps, gone *quantity.Quantity) (float64, error) {
	mass, err := weight("start weight", s.Weight)
	if err != nil {
		return 0, err
	}
	w, err := moisture("start moisture", s.Moisture)
	if err != nil {
		return 0, err
	}
	l, err := lost(gone)
	if err != nil {
		return 0, err
	}
	onWet := to.wet(s.Moisture)
	dry := mass * (1 - w)
	to.add(DryMatter{Batch, given(s.Weight), onWet, like(dry, s.Weight)})
	if gone != nil {
		to.add(Left{like(dry, s.Weight), given(*gone), like(dry*(1-l), s.Weight)})
	}
	return dry * (1 - l), nil
}

// wet gives a moisture on the wet basis, with a step of working where it was given on
// the other.
func (s *steps) wet(q quantity.Quantity) Value {
	if q.Dimension != quantity.DryShare {
		return given(q)
	}
	w := like(q.SI/(1+q.SI), in("%", decimals(q)))
	s.add(WetBasis{given(q), w})
	return w
}

func abs(x float64) float64 { return max(x, -x) }
