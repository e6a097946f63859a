package reckon

import (
	"fmt"

	"maltwright/lang/quantity"
)

// YieldResult is what became of the barley, each a share of 0 upward.
type YieldResult struct {
	AsIs    float64 // malt as it is, of barley as it is
	DryMalt float64 // dry matter of the malt, of barley as it is
	Dry     float64 // dry matter of the malt, of that of the barley
	Lost    float64 // 1 − Dry
	Answer  Answer
}

// Yield compares malt with the barley it was made of, each with its moisture:
//
//	as it is = M / B    dry = M·(1 − m) / (B·(1 − b))    lost = 1 − dry
//
// The weights are those of the batch, or those of a thousand corns before and
// after: the sum is the same, and a thousand corns need no account of spillage. It
// returns an *Error for a weight not above nothing, for moistures outside 0 to
// below 100 %, and for malt that holds more dry matter than its barley.
func Yield(barley, malt Start) (YieldResult, error) {
	var r YieldResult
	a := &r.Answer
	before, err := part(a, "barley", barley, barley.Weight)
	if err != nil {
		return YieldResult{}, err
	}
	after, err := part(a, "malt", malt, barley.Weight)
	if err != nil {
		return YieldResult{}, err
	}
	like := barley.Weight
	if after > before*(1+roundingOfSums) {
		return YieldResult{}, &Error{fmt.Sprintf("the malt holds %s of dry matter, more than the barley, %s", like.Like(after), like.Like(before)),
			"dry matter is only lost; weigh again and look at both moistures"}
	}
	r.AsIs, r.DryMalt = malt.Weight.SI/barley.Weight.SI, after/barley.Weight.SI
	r.Lost = max(1-after/before, 0)
	r.Dry = 1 - r.Lost
	r.show(barley, malt, like.Like(before), like.Like(after))
	return r, nil
}

// part is the dry matter of the barley or of the malt, in kg, shown in the unit of
// the barley so that the two can be compared.
func part(a *Answer, what string, s Start, like quantity.Quantity) (float64, error) {
	mass, err := readWeight(what+" weight", s.Weight)
	if err != nil {
		return 0, err
	}
	w, err := readMoisture(what+" moisture", s.Moisture)
	if err != nil {
		return 0, err
	}
	onWet := a.wet(s.Moisture)
	dry := mass * (1 - w)
	a.addLine(what+", dry", fmt.Sprintf("%s × (1 − %s) = %s", s.Weight, onWet, like.Like(dry)))
	return dry, nil
}

func (r *YieldResult) show(barley, malt Start, before, after string) {
	a, p := &r.Answer, percent()
	a.addLine("yield as it is", fmt.Sprintf("%s / %s = %s", malt.Weight, barley.Weight, p.Like(r.AsIs)))
	a.addLine("dry malt", fmt.Sprintf("%s / %s = %s", after, barley.Weight, p.Like(r.DryMalt)))
	a.addLine("of dry barley", fmt.Sprintf("%s / %s = %s", after, before, p.Like(r.Dry)))
	a.addLine("lost", fmt.Sprintf("100 %% − %s = %s", p.Like(r.Dry), p.Like(r.Lost)))
	a.addFigure("yield_as_is", "yield as it is", p, r.AsIs)
	a.addFigure("yield_dry_malt", "dry malt of barley as it is", p, r.DryMalt)
	a.addFigure("yield_dry", "dry malt of dry barley", p, r.Dry)
	a.addFigure("dry_matter_lost", "dry matter lost", p, r.Lost)
}
