package quantity

import "fmt"

// Range is two quantities of one dimension; a single value has Low equal to High.
type Range struct{ Low, High Quantity }

// Between makes a range from the parts of its two ends, as written: 14 to 17 °C, 43
// to 45 %, 5 lb 4 oz to 6 lb. Where the low end is a single number with no unit it
// takes that of the high end, if that has one alone: of 5 to 6 lb 4 oz the 5 could be
// either. With no high parts the range is the single value of the low ones.
//
// Between returns the errors of Make, in which the parts of the high end count on
// from those of the low one; MixedDimensions where the ends are of two dimensions,
// or one is of the whole weight and one of the dry matter; and UpsideDown, together
// with the range as it was written, where the low end is above the high one.
func Between(low, high []Part) (Range, error) {
	if len(high) == 0 {
		q, err := Make(low...)
		return Range{q, q}, err
	}
	if Borrows(low, high) {
		low = []Part{{low[0].Number, high[0].Unit}}
	}
	l, err := Make(low...)
	if err != nil {
		return Range{}, err
	}
	h, err := Make(high...)
	if err != nil {
		if e, ok := err.(*Error); ok {
			e.Part += len(low)
		}
		return Range{}, err
	}
	r := Range{l, h}
	return r, r.check(len(low))
}

// Borrows tells whether the low end of a range has no unit of its own and takes that of
// the high end, as in 43 to 45 %.
func Borrows(low, high []Part) bool { return len(low) == 1 && low[0].Unit == "" && len(high) == 1 }

func (r Range) check(high int) error {
	switch {
	case r.High.first.unit == nil && r.Low.first.unit != nil:
		return &Error{Kind: MissingUnit, Part: high, Message: fmt.Sprintf("%s has no unit", r.High), Hint: "write the unit behind both ends, or behind the last",
			Fix: r.High.String() + " " + r.Low.Unit()}
	case r.Low.Dimension != r.High.Dimension:
		return &Error{Kind: MixedDimensions, Part: high,
			Message: fmt.Sprintf("%s is %s, and %s is %s", r.Low, r.Low.Dimension.withArticle(), r.High, r.High.Dimension.withArticle()),
			Hint:    "both ends of a range are of one kind, such as 14 to 17 °C"}
	case r.Low.SI > r.High.SI:
		turned := Range{r.High, r.Low}.String()
		return &Error{Kind: UpsideDown, Message: fmt.Sprintf("%s runs from the higher to the lower", r), Hint: "write " + turned, Fix: turned}
	}
	return nil
}

// Single tells whether the range is one value.
func (r Range) Single() bool { return r.Low.SI == r.High.SI }

// Contains tells whether a value in SI lies in the range, ends included, to within
// one part in 1e9.
func (r Range) Contains(si float64) bool { return Bound{Is, r}.Holds(si) }

// String is "14 to 17 °C", or "14 °C" for a single value. The unit stands once
// where both ends have the same single one.
func (r Range) String() string {
	low, high := r.Low.String(), r.High.String()
	switch {
	case low == high:
		return low
	case len(r.Low.more) == 0 && len(r.High.more) == 0 && r.Low.first.unit == r.High.first.unit:
		return r.Low.first.printedNumber() + " to " + high
	}
	return low + " to " + high
}
