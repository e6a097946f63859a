package read

import (
	"fmt"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

// restBound reports a rest in store that is said by its longest: a rest is what the malt
// lies at the least, and what it keeps no rule of the language asks for.
func (b *builder) restBound(v *given) {
	if v.op == nil || *v.op != quantity.AtMost && *v.op != quantity.Below {
		return
	}
	f := boundWrongWay.At(v.place, fmt.Sprintf("store says how long the malt rests before use, and %s lets it be used at once", v.place.Text()))
	f.Severity = caution
	f.Hint = fmt.Sprintf("write at least %s", v.rng)
	b.note(f)
}

// timesBound reports a repeat that is said by the fewest times, or by a number that is
// not among them.
func (b *builder) timesBound(s *model.Repeat, v *given) {
	if s.Times == nil || v.op == nil || *v.op == quantity.AtMost || *v.op == quantity.Is {
		return
	}
	n := many(s.Times.Range.High.SI)
	f := boundWrongWay.At(v.place, fmt.Sprintf("a repeat needs an end, and %s times is none: it is taken as %s", strings.TrimSuffix(v.place.Text(), " times"), n))
	f.Severity = caution
	f.Hint = fmt.Sprintf("write %s times, or at most %s times where it waits for something", n, n)
	if s.Until != nil {
		f.Hint = fmt.Sprintf("write at most %s times: it ends sooner where what it waits for is reached", n)
	}
	b.note(f)
}
