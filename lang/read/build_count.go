package read

import (
	"fmt"
	"math"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// acrospireClasses is how many numbers a count of the acrospire has: none, to 1/4,
// to 1/2, to 3/4, to the whole, overgrown.
const acrospireClasses = 6

// sayOfHowMany is what is to be done where chit was counted of so many kernels, and nobody says how many.
const sayOfHowMany = "say of how many kernels, as in of 100"

// counted builds a count of kernels.
func (r *recorder) counted(s *filled) {
	x := &model.Counted{What: s.slot(0).chosen()}
	if s.has("of") {
		if x.Of = r.whole(s.clause("of", 0).quantity(), 1, "a count"); x.Of == nil {
			return
		}
	}
	sum := 0.0
	for _, v := range s.slots[1:] {
		if v == nil {
			continue
		}
		n := inKernels(v.quantity(), x)
		if n.Dimension == quantity.Share {
			f := countsDiffer.At(n.Place, countless(x, n))
			if f.Hint = sayOfHowMany; x.What.Text != model.Chit {
				f.Hint = "count the kernels of each class, and put the six numbers here"
			}
			r.refuse(f)
			return
		}
		if r.shareOfCount(x, v, n) {
			return
		}
		n = r.whole(n, 0, "a count")
		if n == nil {
			return
		}
		x.Kernels = append(x.Kernels, *n)
		sum += n.SI
	}
	if why := counts[x.What.Text](x, sum); why != "" {
		f := countsDiffer.At(s.place, why)
		if x.What.Text == model.Chit && len(x.Kernels) == 1 && x.Of == nil {
			f.Hint = sayOfHowMany
		}
		r.refuse(f)
		return
	}
	r.add(s, x, &x.Seen)
}

// shareOfCount reports a count of chit that is written as a share: 84/100, 0.84 of 100.
func (r *recorder) shareOfCount(x *model.Counted, v *given, n *model.Quantity) bool {
	text := v.amount.Text()
	top, bottom, fraction := strings.Cut(text, "/")
	if x.What.Text != model.Chit || n.SI >= 1 || n.SI == 0 || strings.Contains(top, " ") {
		return false
	}
	f := countsDiffer.At(n.Place, fmt.Sprintf("%s is no count of kernels", text))
	switch {
	case fraction && x.Of == nil:
		f.Write(n.Place, fmt.Sprintf("%s %s %s", top, clauseOf, bottom))
	case fraction:
		f.Write(n.Place, percent(n.SI))
	case x.Of != nil && math.Abs(n.SI*x.Of.SI-math.Round(n.SI*x.Of.SI)) < 1e-6:
		f.Write(n.Place, trimmed(math.Round(n.SI*x.Of.SI)))
	default:
		f.Write(n.Place, movePoint(quantity.Spell(text), 2)+" %")
	}
	r.refuse(f)
	return true
}

// inKernels is the count that a share of the kernels is, to the nearest kernel: 88 % of 200 is
// 176. A share of what is not said stays one, and so does one of the acrospire.
func inKernels(q *model.Quantity, x *model.Counted) *model.Quantity {
	if q == nil || q.Dimension != quantity.Share || x.Of == nil || x.What.Text != model.Chit {
		return q
	}
	n := *q
	n.SI, n.Dimension = math.Round(q.SI*x.Of.SI), quantity.Number
	return &n
}

// countless says why a share is no count.
func countless(x *model.Counted, share *model.Quantity) string {
	if x.What.Text == model.Chit {
		return fmt.Sprintf("%s have chitted, but how many kernels were counted is not written", share)
	}
	return fmt.Sprintf("%s is a share; a count of the acrospire has the kernels of each class", share)
}

// counts says what is wrong with a count, by what was counted, or "".
var counts = map[string]func(*model.Counted, float64) string{
	model.Chit: func(x *model.Counted, sum float64) string {
		switch {
		case len(x.Kernels) != 1:
			return fmt.Sprintf("chit is counted with one number, of how many kernels; %d stand here", len(x.Kernels))
		case x.Of == nil:
			return fmt.Sprintf("%.0f kernels have chitted, but how many were counted is not written", sum)
		case sum > x.Of.SI:
			return fmt.Sprintf("%.0f kernels have chitted of %.0f that were looked at", sum, x.Of.SI)
		}
		return ""
	},
	model.Acrospire: func(x *model.Counted, sum float64) string {
		switch {
		case len(x.Kernels) != acrospireClasses:
			return fmt.Sprintf("the acrospire is counted with six numbers, none, to 1/4, to 1/2, to 3/4, to the whole and overgrown; %s", stand(len(x.Kernels)))
		case sum == 0:
			return "no kernel was counted"
		case x.Of != nil && sum != x.Of.SI:
			return fmt.Sprintf("the six counts make %.0f kernels, and %.0f were looked at", sum, x.Of.SI)
		}
		return ""
	},
}

func stand(n int) string {
	if n == 1 {
		return "one stands here"
	}
	return fmt.Sprintf("%d stand here", n)
}

// readable reports a temperature that cannot be in its place, and drops it.
func (r *recorder) readable(t *model.Temperature) *model.Temperature {
	if t == nil || t.Low.Dimension != quantity.Temperature {
		return nil
	}
	place, _ := vocabulary.FindPlace(t.Where)
	if place.Can.Contains(t.Low.SI) {
		return t
	}
	f := outOfRange.At(t.Place, fmt.Sprintf("a temperature of the %s of %s is outside %s", t.Where, t.Range.Range, inUnitsOf(t.Range.Range, place.Can)))
	onlySlip(&f, t.Place, t.Low, func(si float64) bool { return place.Can.Contains(si) })
	r.refuse(f)
	return nil
}
