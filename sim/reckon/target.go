package reckon

import (
	"fmt"

	"maltwright/lang/quantity"
)

// Start is a batch as it was weighed first.
type Start struct{ Weight, Moisture quantity.Quantity }

// TargetResult is the weight at which a batch holds the wanted moisture, in kg.
type TargetResult struct {
	Weight    float64
	DryMatter float64 // what is left of it
	Change    float64 // weight to gain, or below 0 to lose
	Answer    Answer
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
	dry, err := from.dryMatter(&r.Answer, gone)
	if err != nil {
		return TargetResult{}, err
	}
	w, err := readMoisture("wanted moisture", wanted)
	if err != nil {
		return TargetResult{}, err
	}
	r.DryMatter, r.Weight = dry, dry/(1-w)
	r.Change = r.Weight - from.Weight.SI
	r.show(from, wanted)
	return r, nil
}

func (r *TargetResult) show(from Start, wanted quantity.Quantity) {
	a, like := &r.Answer, from.Weight
	weight, change := like.Like(r.Weight), like.Like(abs(r.Change))
	onWet := a.wet(wanted)
	a.addLine("weight", fmt.Sprintf("%s / (1 − %s) = %s", like.Like(r.DryMatter), onWet, weight))
	word, sum := "to gain", fmt.Sprintf("%s − %s = %s", weight, from.Weight, change)
	if r.Change < 0 {
		word, sum = "to lose", fmt.Sprintf("%s − %s = %s", from.Weight, weight, change)
	}
	share := abs(r.Change) / from.Weight.SI
	a.addLine(word, fmt.Sprintf("%s, %s of %s", sum, percent().Like(share), from.Weight))
	a.addFigure("weight", "weight at "+wanted.String(), like, r.Weight)
	a.addFigure("change", word, like, r.Change)
	a.Figures[1].Text = change
	a.addFigure("dry_matter", "dry matter", like, r.DryMatter)
}

// dryMatter is the dry matter the batch has left, in kg, with its working.
func (s Start) dryMatter(a *Answer, gone *quantity.Quantity) (float64, error) {
	mass, err := readWeight("start weight", s.Weight)
	if err != nil {
		return 0, err
	}
	w, err := readMoisture("start moisture", s.Moisture)
	if err != nil {
		return 0, err
	}
	l, err := readLost(gone)
	if err != nil {
		return 0, err
	}
	onWet := a.wet(s.Moisture)
	dry := mass * (1 - w)
	a.addLine("dry matter", fmt.Sprintf("%s × (1 − %s) = %s", s.Weight, onWet, s.Weight.Like(dry)))
	if gone != nil {
		a.addLine("of it left", fmt.Sprintf("%s × (1 − %s) = %s", s.Weight.Like(dry), gone, s.Weight.Like(dry*(1-l))))
	}
	return dry * (1 - l), nil
}

// wet writes a moisture on the wet basis, with a line of working where it was
// given on the other.
func (a *Answer) wet(q quantity.Quantity) string {
	if q.Dimension != quantity.DryShare {
		return q.String()
	}
	text := in("%", decimals(q)).Like(q.SI / (1 + q.SI))
	a.addLine("wet basis", wetSum(q)+text)
	return text
}

func abs(x float64) float64 { return max(x, -x) }
