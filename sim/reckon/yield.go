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
	Working []Step
}

// Yield compares malt with the barley it was made of, each with its moisture:
//
//	as it is = M / B    dry = M·(1 − m) / (B·(1 − b))    lost = 1 − dry
//
// The weights are those of the batch, or those of a thousand kernels before and
// after: the sum is the same, and a thousand kernels need no account of spillage. It
// returns an *Error for a weight not above nothing, for moistures outside 0 to
// below 100 %, and for malt that holds more dry matter than its barley.
func Yield(barley, malt Start) (YieldResult, error) {
	var r YieldResult
	working := steps{}
	before, err := working.part(Barley, barley, barley.Weight)
	if err != nil {
		return YieldResult{}, err
	}
	after, err := working.part(Malt, malt, barley.Weight)
	if err != nil {
		return YieldResult{}, err
	}
	unit := barley.Weight
	if after > before*(1+roundingOfSums) {
		return YieldResult{}, &Error{fmt.Sprintf("the malt holds %s of dry matter, more than the barley, %s", unit.Like(after), unit.Like(before)),
			"dry matter is only lost; weigh again and look at both moistures"}
	}
	r.AsIs, r.DryMalt = malt.Weight.SI/barley.Weight.SI, after/barley.Weight.SI
	r.Lost = max(1-after/before, 0)
	r.Dry = 1 - r.Lost
	working.add(Part{AsIs, given(malt.Weight), given(barley.Weight), percents(r.AsIs)},
		Part{DryMalt, like(after, unit), given(barley.Weight), percents(r.DryMalt)},
		Part{OfDry, like(after, unit), like(before, unit), percents(r.Dry)},
		Lost{percents(r.Dry), percents(r.Lost)})
	r.Working = working
	return r, nil
}

// part is the dry matter of the barley or of the malt, in kg, shown in the unit of
// the barley so that the two can be compared.
func (st *steps) part(of Grain, s Start, unit quantity.Quantity) (float64, error) {
	mass, err := weight(string(of)+" weight", s.Weight)
	if err != nil {
		return 0, err
	}
	w, err := moisture(string(of)+" moisture", s.Moisture)
	if err != nil {
		return 0, err
	}
	onWet := st.wet(s.Moisture)
	dry := mass * (1 - w)
	st.add(DryMatter{of, given(s.Weight), onWet, like(dry, unit)})
	return dry, nil
}
