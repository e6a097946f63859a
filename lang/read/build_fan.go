package read

import (
	"cmp"
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/sorted"
	"maltwright/lang/vocabulary"
)

// A curve has at least so many points, and at most so many.
const (
	fewestPoints = 2
	mostPoints   = 5
)

// fan reads a point of the curve of a fan, or the power that it draws.
func (b *builder) fan(k *drying, r *filled) {
	v := r.slot(0)
	switch at := r.clause("at", 0); {
	case v == nil:
	case v.rng.Low.Dimension == quantity.Power && r.has("at"):
		f := fanCurve.At(r.place, fmt.Sprintf("%s is the power that the fan draws, which has no pressure", v.place.Text()))
		f.Hint = "write two lines: one with the power alone, one with an airflow and its pressure"
		b.refuse(f)
	case v.rng.Low.Dimension == quantity.Power && k.FanPower != nil:
		b.again(r.place, k.draws, "the power of the fan is given twice in this block")
	case v.rng.Low.Dimension == quantity.Power:
		k.FanPower, k.draws = v.quantity(), r.place
	case at != nil:
		k.Fan = append(k.Fan, model.FanPoint{Flow: v.quantity(), Pressure: at.quantity(), Place: r.place})
	case r.whole:
		f := fanCurve.At(r.place, fmt.Sprintf("%s is a point of a curve, and it does not say at what pressure", v.place.Text()))
		f.Write(r.place, fmt.Sprintf("airflow %s", v.place.Text()), fmt.Sprintf("fan %s at 0 Pa", v.place.Text()))
		f.Hint += ": the first is the air that goes through the malt, the second the air of the fan with nothing in its way"
		b.refuse(f)
	}
}

// kilnFan puts the curve of a fan in order, and drops one that is none, or of which a line was
// reported.
func (b *builder) kilnFan(k *drying, r *filled) {
	written := k.Fan
	k.Fan = nil
	lines := len(written)
	if k.FanPower != nil {
		lines++
	}
	switch {
	case len(written) == 0 || len(written) < fewestPoints && r.count(vocabulary.FactFan) > lines:
		return
	case len(written) < fewestPoints:
		f := fanCurve.At(written[0].Place, "one point makes no curve")
		f.Hint = fmt.Sprintf("add a line with less air at more pressure, from the plate or the sheet of the fan; or write airflow %s if so much goes through the malt", written[0].Flow)
		b.refuse(f)
		return
	case len(written) > mostPoints:
		b.refuse(fanCurve.At(written[mostPoints].Place, fmt.Sprintf("a curve has at most %d points, and this is one more", mostPoints)))
		return
	}
	curve := slices.Clone(written)
	sorted.Stable(curve, func(x, y model.FanPoint) int { return cmp.Compare(x.Flow.SI, y.Flow.SI) })
	for i := range curve[1:] {
		less, more := curve[i], curve[i+1]
		if more.Flow.SI > less.Flow.SI && more.Pressure.SI < less.Pressure.SI {
			continue
		}
		if more.Place.Start < less.Place.Start {
			less, more = more, less
		}
		f := fanCurve.At(more.Place, fmt.Sprintf("%s at %s does not go with %s at %s: a fan gives less air against more pressure", more.Flow, more.Pressure, less.Flow, less.Pressure))
		f.Related = []finding.Related{{Place: less.Place, Message: "the other point"}}
		b.refuse(f)
		return
	}
	k.Fan = curve
}

// fanForPower reports a fan that would give the air more power than it draws.
func (b *builder) fanForPower(k *model.Kiln) {
	if k.FanPower == nil {
		return
	}
	for _, p := range k.Fan {
		gives := p.Flow.SI * p.Pressure.SI
		if gives <= k.FanPower.SI {
			continue
		}
		f := factsClash.At(p.Place, fmt.Sprintf("%s at %s is a power of %s, and the fan draws %s", p.Flow, p.Pressure, k.FanPower.Like(gives), k.FanPower))
		f.Hint = "look at the three numbers and their units; a good fan gives the air two thirds of the power that it draws"
		f.Related = []finding.Related{{Place: k.FanPower.Place, Message: "what it draws"}}
		b.note(f)
		return
	}
}
