package read

import (
	"fmt"
	"math"
	"time"

	"maltwright/lang/model"
)

// awake builds a shift.
func (b *builder) awake(s *model.Site, r *filled) {
	v := r.slot(0)
	if v == nil {
		return
	}
	shift := model.Shift{Clock: model.Clock{From: v.clock[0], To: v.clock[1], Place: v.place}}
	if n := r.clause("with", 0).quantity(); n != nil {
		if n.SI != math.Trunc(n.SI) || n.Unit() != "" && n.Unit() != handsUnit {
			b.refuse(wrongDimension.At(n.Place, fmt.Sprintf("%s is no number of people", n)))
		} else {
			shift.Hands = n
		}
	}
	s.Awake = append(s.Awake, shift)
}

const handsUnit = "hands"

// away builds days on which nobody works.
func (b *builder) daysAway(s *model.Site, r *filled) {
	v := r.slot(0)
	if v == nil {
		return
	}
	d := model.Days{Place: v.place}
	d.First, _ = time.Parse(time.DateOnly, v.word)
	d.Last, _ = time.Parse(time.DateOnly, v.last)
	if d.Last.Before(d.First) {
		f := rangeUpsideDown.At(v.place, fmt.Sprintf("the first day, %s, is after the last, %s", v.word, v.last))
		f.Hint = fmt.Sprintf("write %s to %s", v.last, v.word)
		b.refuse(f)
		return
	}
	s.Away = append(s.Away, d)
}
