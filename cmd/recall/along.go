package recall

import (
	"fmt"
	"slices"

	"maltwright/lang/model"
)

// other is something that a weighing goes by and that the house of then has otherwise.
type other struct {
	of     string // as vessel "tub"
	change string // as Batch.Since has it
	apply  func()
}

// weighedOnScale tells whether a record holds weights that its house has a say in: what
// stood on the scale with the grain, or how finely that shows it.
func weighedOnScale(b *model.Batch) bool {
	return slices.ContainsFunc(b.Readings, func(x model.Reading) bool {
		w, ok := x.(*model.Weighed)
		return ok && (w.In != nil || b.ScaleOf(w) != nil)
	})
}

// along lists what the weighings of a batch go by that was otherwise in the house of then,
// each time that one goes by it. What that house did not have, or did not say, stays as it
// is.
func along(b *model.Batch, then *model.House) (list []other) {
	for _, x := range b.Readings {
		if w, ok := x.(*model.Weighed); ok {
			list = append(append(list, holderOf(w, then)...), scaleOf(w, b.ScaleOf(w), then)...)
		}
	}
	return list
}

// holderOf compares what stood on the scale.
func holderOf(w *model.Weighed, then *model.House) (list []other) {
	if w.In == nil {
		return nil
	}
	for _, h := range then.Holders() {
		if change := changed("weighs", h.Weighs, w.In.Weighs); h.Kind == w.In.Kind && h.Name == w.In.Name && change != "" {
			list = append(list, other{fmt.Sprintf("%s %q", h.Kind, h.Name), change, func() { w.In = &h }})
		}
	}
	return list
}

// scaleOf compares the scale that a weight was read on. Where the line names none it is the
// only one of the house, then as now.
func scaleOf(w *model.Weighed, on *model.Scale, then *model.House) (list []other) {
	for _, s := range then.Scales {
		if on == nil || w.On != nil && s.Name != on.Name || w.On == nil && len(then.Scales) > 1 {
			continue
		}
		apply := func() {
			if w.On != nil {
				w.On = s
			}
		}
		for _, change := range []string{changed("division", s.Division, on.Division), changed("holds", s.Holds, on.Holds)} {
			if change != "" {
				list = append(list, other{fmt.Sprintf("scale %q", s.Name), change, apply})
			}
		}
	}
	return list
}

// changed says what a word gave and gives, "" where that is the same or one of them is not
// said.
func changed(word string, then, now *model.Quantity) string {
	if then == nil || now == nil || then.SI == now.SI {
		return ""
	}
	return fmt.Sprintf("%s %s is now %[1]s %[3]s", word, then, now)
}
