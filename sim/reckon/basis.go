package reckon

import (
	"strings"

	"maltwright/lang/quantity"
)

// BasisResult is a moisture on both bases.
type BasisResult struct {
	Wet, Dry Value // kg of water per kg in all, and per kg of dry matter
	Working  []Step
}

// Basis turns a moisture on the wet basis into the dry, and the other way:
//
//	X = w / (1 − w)    w = X / (1 + X)
//
// It returns an *Error for a moisture below 0 or, on the wet basis, not below 100 %.
func Basis(q quantity.Quantity) (BasisResult, error) {
	w, err := moisture("moisture", q)
	if err != nil {
		return BasisResult{}, err
	}
	if q.Dimension == quantity.DryShare {
		r := BasisResult{Wet: like(w, in("%", decimals(q))), Dry: like(q.SI, q)}
		r.Working = []Step{WetBasis{given(q), r.Wet}}
		return r, nil
	}
	r := BasisResult{Wet: like(w, q), Dry: like(w/(1-w), in("% dry basis", decimals(q)))}
	r.Working = []Step{DryBasis{given(q), r.Dry}}
	return r, nil
}

// decimals is how many digits behind the point the quantity was written with.
func decimals(q quantity.Quantity) int {
	number, _, _ := strings.Cut(q.String(), " ")
	if _, part, ok := strings.Cut(number, "."); ok {
		return len(part)
	}
	return 1
}
