package reckon

import (
	"fmt"
	"strings"

	"maltwright/lang/quantity"
)

// BasisResult is a moisture on both bases.
type BasisResult struct {
	Wet, Dry float64 // kg of water per kg in all, and per kg of dry matter
	Answer   Answer
}

// Basis turns a moisture on the wet basis into the dry, and the other way:
//
//	X = w / (1 − w)    w = X / (1 + X)
//
// It returns an *Error for a moisture below 0 or, on the wet basis, not below 100 %.
func Basis(q quantity.Quantity) (BasisResult, error) {
	w, err := readMoisture("moisture", q)
	if err != nil {
		return BasisResult{}, err
	}
	r := BasisResult{Wet: w, Dry: w / (1 - w)}
	a := &r.Answer
	if q.Dimension == quantity.DryShare {
		r.Dry = q.SI
		a.addFigure("moisture_wet_basis", "wet basis", in("%", decimals(q)), w)
		a.addLine("wet basis", wetSum(q)+a.Figures[0].Text)
		a.addFigure("moisture_dry_basis", "dry basis", q, r.Dry)
		return r, nil
	}
	a.addFigure("moisture_dry_basis", "dry basis", in("% dry basis", decimals(q)), r.Dry)
	a.addLine("dry basis", fmt.Sprintf("%s / (1 − %s) = %s", q, q, a.Figures[0].Text))
	a.addFigure("moisture_wet_basis", "wet basis", q, w)
	return r, nil
}

func wetSum(q quantity.Quantity) string {
	plain := strings.TrimSuffix(q.String(), " dry basis")
	return fmt.Sprintf("%s / (1 + %s) = ", plain, plain)
}

// decimals is how many digits behind the point the quantity was written with.
func decimals(q quantity.Quantity) int {
	number, _, _ := strings.Cut(q.String(), " ")
	if _, part, ok := strings.Cut(number, "."); ok {
		return len(part)
	}
	return 1
}
