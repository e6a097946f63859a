package read

import (
	"fmt"
	"math"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// sensible holds each value of a statement against what makes sense in its slot. A
// value that cannot be is reported and dropped; one out of the ordinary is reported
// and stays. It tells whether all of them stay.
func (b *builder) sensible(r *filled) bool {
	before := b.dropped
	b.senseSlots(r.row.Slots, r.slots)
	for i := range r.row.Clauses {
		c := &r.row.Clauses[i]
		if !c.Joins {
			b.senseSlots(c.Slots, r.clauses[c.Word])
			continue
		}
		for _, part := range r.parts(c.Word) {
			b.senseSlots(c.Slots, part)
		}
	}
	return b.dropped == before
}

func (b *builder) senseSlots(slots []vocabulary.Slot, values []*given) {
	for i := range slots {
		s := slots[i].Sense
		if s == nil || i >= len(values) || values[i] == nil {
			continue
		}
		if s = s.Beside(b.beside).Of(values[i].rng.Low.Dimension); s != nil && !b.makesSense(s, values[i]) {
			values[i] = nil
		}
	}
}

// makesSense reports a value that is out of the ordinary, and tells whether it can be
// at all. A range that is upside down, and moisture that no grain holds, have findings
// of their own.
func (b *builder) makesSense(s *vocabulary.Sense, v *given) bool {
	if s.OfDry {
		v.rng = quantity.Range{Low: ofDry(v.rng.Low), High: ofDry(v.rng.High)}
	}
	low, high := v.rng.Low.SI, v.rng.High.SI
	switch {
	case low > high || s.Held && high > mostMoisture(b.house.Limits):
		return true
	case !within(s.Can, v.rng):
		f := outOfRange.At(v.place, fmt.Sprintf("%s of %s is outside %s", s.What, v.rng, inUnitsOf(v.rng, s.Can)))
		slipOf(&f, v.place, v.rng, usualOr(s))
		b.refuse(f)
		return false
	case s.Usual != nil && !within(*s.Usual, v.rng):
		b.unusual(s, *s.Usual, v, "")
	}
	return true
}

// ofDry is a share of the dry matter that was read as the moisture which its dry basis
// would be.
func ofDry(q quantity.Quantity) quantity.Quantity {
	if q.WrittenAs() != quantity.DryShare || q.Dimension != quantity.Share {
		return q
	}
	dry, err := q.As(quantity.DryShare)
	if err != nil {
		return q
	}
	share, err := quantity.In(dry.SI, "%")
	if err != nil {
		return q
	}
	return share
}

// senseIn gives the sense of the first value of a statement.
func senseIn(block vocabulary.Block, word string) *vocabulary.Sense {
	row, ok := vocabulary.Lookup(block, word)
	if !ok {
		return nil
	}
	return row.Slots[0].Sense
}

// unusual reports a value that hardly is, of something.
func (b *builder) unusual(s *vocabulary.Sense, usual quantity.Range, v *given, of string) {
	f := unusualFigure.At(v.place, fmt.Sprintf("%s of %s is out of the ordinary%s: %s is usual", s.What, v.rng, of, inUnitsOf(v.rng, usual)))
	if !slipOf(&f, v.place, v.rng, usual) {
		f.Hint = orElse(s.Advice, f.Hint)
	}
	b.note(f)
}

func orElse(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

func usualOr(s *vocabulary.Sense) quantity.Range {
	if s.Usual != nil {
		return *s.Usual
	}
	return s.Can
}

func within(band, r quantity.Range) bool { return band.Contains(r.Low.SI) && band.Contains(r.High.SI) }

// inUnitsOf writes a band in the unit in which a value is written, unless the band's own
// unit is the same but for noughts: who writes kg reads g.
func inUnitsOf(written, band quantity.Range) string {
	unit := written.High.Unit()
	if written.High.Dimension != band.High.Dimension || sameButForNoughts(unit, band.Low.Unit()) || sameButForNoughts(unit, band.High.Unit()) {
		return band.String()
	}
	return strings.TrimSuffix(converted(band.Low, written.High), " "+unit) + " to " + converted(band.High, written.High)
}

// converted writes one end of a band in the unit of a value: a large number in three
// digits, and one too small for the unit in its own.
func converted(end, like quantity.Quantity) string {
	unit := like.Unit()
	made, err := quantity.In(end.SI, unit)
	if end.Dimension == quantity.Time {
		return like.Lasting(end.SI)
	}
	if err != nil || made.Dimension != end.Dimension {
		return like.Like(end.SI)
	}
	if end.Dimension == quantity.Temperature {
		return made.String()
	}
	one := unitSI(unit)
	switch n := end.SI / one; {
	case n > 0 && n < 0.001:
		return end.String()
	case n > 0 && n < 0.1:
		return inTwoDigits(n) + " " + unit
	case n >= 1000:
		scale := math.Pow10(int(math.Log10(n)) - 2)
		if rounded, err := quantity.In(math.Round(n/scale)*scale*one, unit); err == nil {
			return rounded.String()
		}
	}
	return made.String()
}

// sameButForNoughts tells whether the units differ by a power of ten or not at all.
func sameButForNoughts(one, other string) bool {
	if one == other {
		return true
	}
	a, errA := quantity.Make(quantity.Part{Number: "1", Unit: one})
	b, errB := quantity.Make(quantity.Part{Number: "1", Unit: other})
	if errA != nil || errB != nil || a.Dimension != b.Dimension || a.Dimension == quantity.Temperature {
		return false
	}
	tens := math.Log10(a.SI / b.SI)
	return math.Abs(tens-math.Round(tens)) < 1e-9
}
