package records

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

const (
	byHolder  = 2.0 // standard deviations of what is to be expected, from which on a weight that a vessel explains is told
	noFurther = 1.0 // the same, within which the vessel explains it
)

// withHolder finds a weight that is too much by what the vessel weighs in which the grain lies: it
// stood on the scale with it. Of a first weight nothing else in the record shows that.
func (r *record) withHolder(h *held, i int) {
	o := &h.trial.Observations[i]
	x, ok := o.Reading.(*model.Weighed)
	if !ok || x.In != nil || x.OfBag || r.batch.TareOf(x) != nil || r.aside[h.seats[i]] || h.lines.Near(i) {
		return
	}
	expected, sd, ok := h.lines.Foretell(i)
	if !ok || !(sd > 0) {
		return
	}
	off := func(net float64) float64 { return (net - expected) / (sd * net / o.Value) }
	for _, holder := range r.batch.Process.Holders() {
		more := o.Value - expected
		if off(o.Value) < byHolder || math.Abs(off(o.Value-holder.Weighs.SI)) > noFurther || math.Abs(more-holder.Weighs.SI) > more/2 {
			continue
		}
		f := readingDoubtful.At(x.Weight.Place, fmt.Sprintf("%s is %s more than forecast, and %q weighs %s: was it on the scale?", weightWords(x), about(x.Weight.Quantity, more), holder.Name, holder.Weighs))
		f.Hint = fmt.Sprintf("if it was, write in %q behind the weight", holder.Name)
		f.Related = []finding.Related{{Place: holder.Weighs.Place, Message: "what it weighs when it is empty"}}
		r.slip(h.seats[i], f)
		return
	}
}
