package read

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

func (r *recorder) weighed(s *filled) {
	if !s.has("at") && !s.has("after") {
		f := valueNeeded.At(s.place, "weighed needs at with the time, or after with a step")
		f.Hint = "its form: " + vocabulary.Form(*s.row)
		r.refuse(f)
		return
	}
	weight := r.positive(s.slot(1).quantity(), "a weight")
	if weight == nil {
		return
	}
	x := &model.Weighed{Weight: *weight, OfBag: s.slot(0) != nil, Clean: s.slot(2) != nil}
	if s.has("after") {
		step, ok := r.step(s, s.clauses["after"])
		if !ok {
			return
		}
		x.After = &step
	}
	if !r.onScale(s, x) {
		if at := s.clause("at", 0); at != nil { // the lines below it go by its time
			r.instant(at, false)
		}
		return
	}
	r.add(s, x, &x.Seen)
}

// onScale reads what stood on which scale. It is false where the weight of the grain
// cannot be told from it.
func (r *recorder) onScale(s *filled, x *model.Weighed) bool {
	if v := s.clause("on", 0); v != nil {
		if x.On = r.scaleOf(v); x.On == nil && !r.lost {
			r.dropped++
			return false
		}
	}
	v := s.clause("in", 0)
	if v == nil {
		return true
	}
	x.In = r.holder(v)
	switch {
	case x.In == nil:
		r.dropped++
		return false
	case x.In.Weighs == nil:
		f := missingStatement.At(v.place, fmt.Sprintf("%s %q does not say what it weighs when it is empty, so the weight of the grain in it is not known", x.In.Kind, x.In.Name))
		f.Hint = fmt.Sprintf("add to the block of %s %q a line such as: weighs 990 g; where the grain was weighed without it, take in %[2]q out", x.In.Kind, x.In.Name)
		if p := r.batch.Process; p != nil {
			f.Hint = p.Units().Retold(f.Hint)
		}
		f.Related = []finding.Related{{Place: x.In.Place, Message: "its weight belongs here"}}
		r.refuse(f)
		return false
	}
	if st := r.sharedSteep(x); st != nil {
		var names []string
		for _, v := range st.Vessels() {
			names = append(names, strconv.Quote(v.Name))
		}
		f := partOfBatch.At(s.place, fmt.Sprintf("%s in %q is a part of the batch, which is steeped in %s, and is not read", x.Weight, x.In.Name, strings.Join(names, " and ")))
		f.Related = []finding.Related{{Place: st.Place(), Message: "it is shared out here"}}
		r.refuse(f)
		return false
	}
	return true
}

// sharedSteep is the steep that shares the batch out among several vessels, one of which a
// weighing is in; nil where all of the batch may lie in that.
func (r *recorder) sharedSteep(x *model.Weighed) (shared *model.Steep) {
	if r.batch.Process == nil || x.OfBag {
		return nil
	}
	for _, st := range r.batch.Process.Stages {
		if in := model.HolderOf(st); in != nil && in.Place == x.In.Place {
			return nil
		}
		if st, ok := st.(*model.Steep); ok && len(st.More) > 0 &&
			slices.ContainsFunc(st.Vessels(), func(v *model.Vessel) bool { return v.Place == x.In.Place }) {
			shared = st
		}
	}
	return shared
}

// scaleOf finds the scale of a name.
func (r *recorder) scaleOf(v *given) *model.Scale {
	r.listScales()
	if s := r.scales[v.word]; s != nil {
		return s
	}
	if list := r.holders[v.word]; len(list) > 0 {
		f := unknownName.At(v.place, fmt.Sprintf("%q is a %s, and no scale", v.word, list[0].Kind))
		f.Hint = fmt.Sprintf("write what stood on the scale behind in: in %q", v.word)
		r.note(f)
		return nil
	}
	return find(r.builder, v, "scale", r.house.Scales, func(s *model.Scale) string { return s.Name })
}

// holder finds the vessel, floor or kiln of a name: of several of one name the one that
// says what it weighs.
func (r *recorder) holder(v *given) *model.Holder {
	r.listScales()
	among := r.holders[v.word]
	if len(among) == 0 {
		return find(r.builder, v, "vessel, floor or kiln", r.anyHolder, func(h *model.Holder) string { return h.Name })
	}
	r.weighedIn[v.word] = true
	found := among[0]
	for _, other := range among[1:] {
		switch {
		case other.Weighs == nil:
		case found.Weighs == nil:
			found = other
		case found.Weighs.SI != other.Weighs.SI:
			f := nameUsedTwice.At(v.place, fmt.Sprintf("%q is a %s that weighs %s, and a %s that weighs %s", found.Name, found.Kind, found.Weighs, other.Kind, other.Weighs))
			f.Related = []finding.Related{{Place: found.Place, Message: "the one"}, {Place: other.Place, Message: "the other"}}
			r.note(f)
			return nil
		}
	}
	return found
}

// listScales lists by their names what grain is weighed on and in, once.
func (b *builder) listScales() {
	if b.holders != nil {
		return
	}
	b.scales, b.holders, b.weighedIn = map[string]*model.Scale{}, map[string][]*model.Holder{}, map[string]bool{}
	for _, s := range b.house.Scales {
		b.scales[s.Name] = s
	}
	for _, h := range b.house.Holders() {
		b.holders[h.Name] = append(b.holders[h.Name], &h)
		b.anyHolder = append(b.anyHolder, &h)
	}
}

// bagsTare tells whether the tare of a record is that of its bag. Where only the process
// says that there is a bag, a record that weighs the batch alone means a vessel.
func bagsTare(t *model.Batch) bool {
	if t.Bag != nil || t.RawBag() == nil {
		return t.Bag != nil
	}
	whole := false
	for _, x := range t.Readings {
		if w, ok := x.(*model.Weighed); ok {
			if w.OfBag {
				return true
			}
			whole = true
		}
	}
	return !whole
}

// wetBag is how much more the bag may weigh than the raw grain in it.
const wetBag = 2

// bagSense reports a bag with more grain in it than there is, or with too little for the
// scales of the house.
func (b *builder) bagSense(bag, charge *model.Quantity) {
	if bag != nil && bag.SI > 0 {
		if s := b.house.Scale(wetBag * bag.SI); s != nil {
			b.together(vocabulary.BagMarks, bag, s.Division)
		}
	}
	if bag == nil || charge == nil || bag.SI < charge.SI {
		return
	}
	f := outOfRange.At(bag.Place, fmt.Sprintf("a bag of %s is no part of a charge of %s", bag, charge))
	f.Related = []finding.Related{{Place: charge.Place, Message: "the charge"}}
	b.note(f)
}
