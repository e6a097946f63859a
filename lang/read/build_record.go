package read

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// recordStatements builds what a batch has besides its readings.
var recordStatements = map[string]func(*recorder, *filled){
	"from": func(r *recorder, s *filled) {
		r.batch.Lots = append(r.batch.Lots, r.taken(s))
	},
	"pinned": (*recorder).pinned,
	"remark": (*recorder).remark,
	"tested": (*recorder).tested,
}

// printed is what a fingerprint looks like.
var printed = regexp.MustCompile(`^[0-9a-f]{12}$`)

func (r *recorder) pinned(s *filled) {
	print := s.slot(0).chosen()
	if !printed.MatchString(print.Text) {
		f := valueNeeded.At(print.Place, fmt.Sprintf("%q is no fingerprint of a process, which is twelve signs of 0 to 9 and a to f", print.Text))
		f.Hint = "leave the line out; maltwright begin writes it"
		r.refuse(f)
		return
	}
	r.batch.Pinned = &model.Pin{Place: s.place, Print: print, Revision: s.clause("from", 0).chosen()}
}

func (r *recorder) remark(s *filled) {
	x := model.Remark{Text: s.slot(0).chosen()}
	timed := r.seen(s, &x.Seen) // the lines below it go by its time
	if strings.TrimSpace(x.Text.Text) == "" {
		f := valueNeeded.At(x.Text.Place, "remark says nothing")
		f.Hint = "write what was noticed, or take the line out"
		r.refuse(f)
		return
	}
	if timed {
		r.batch.Remarks = append(r.batch.Remarks, x)
	}
}

// tested builds what a laboratory found, in a dimension of its kind.
func (r *recorder) tested(s *filled) {
	v := s.slot(1)
	a, known := vocabulary.FindAnalysis(s.slot(0).chosen().Text)
	if v == nil || !known || !r.ofKind(a, v) || !r.makesSense(a.Sense, v) {
		return
	}
	x := model.Tested{What: s.slot(0).chosen(), Found: *v.quantity(), Method: s.clause("by", 0).chosen()}
	if r.seen(s, &x.Seen) {
		x.By = model.Word{}
		r.batch.Tested = append(r.batch.Tested, x)
	}
}

// ofKind reports a value of another dimension than an analysis has, and reads a dry basis
// as the share of the whole that a moisture is. A share that is neither of moisture nor of
// dry matter has no dry basis.
func (r *recorder) ofKind(a vocabulary.Analysis, v *given) bool {
	if len(a.Dims()) == 1 && !a.Sense.OfDry && v.rng.Low.WrittenAs() == quantity.DryShare {
		r.refuse(wrongDimension.At(v.place, fmt.Sprintf("%s is of the dry matter, and %s is tested in %s", v.rng, a.Word, unitsOf(a.Dims()))))
		return false
	}
	for i, d := range a.Dims() {
		if v.rng.Low.Dimension != d {
			continue
		}
		if i > 0 {
			low, errLow := v.rng.Low.As(a.Dims()[0])
			high, errHigh := v.rng.High.As(a.Dims()[0])
			if errLow != nil || errHigh != nil {
				break
			}
			v.rng.Low, v.rng.High = low, high
		}
		return true
	}
	r.refuse(wrongDimension.At(v.place, fmt.Sprintf("%s is %s, and %s is tested in %s", v.rng, withArticle(v.rng.Low.Dimension.String()), a.Word, unitsOf(a.Dims()))))
	return false
}

// unitsOf lists the units of dimensions.
func unitsOf(dims []quantity.Dimension) string {
	var list []string
	for _, u := range quantity.Units() {
		if slices.Contains(dims, u.Dimension) {
			list = append(list, u.Name)
		}
	}
	return quoted(list)
}

// delivered builds a delivery of a lot.
func delivered(_ *builder, g *lot, s *filled) {
	weight := s.slot(0).quantity()
	if weight == nil {
		return
	}
	g.Delivered = append(g.Delivered, model.Delivery{Place: s.place, Weight: *weight, From: s.clause("from", 0).chosen(),
		On: s.clause("on", 0).chosen(), As: s.clause("as", 0).chosen()})
}
