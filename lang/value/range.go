package value

import (
	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
)

// Kind is why an amount is no range of what is wanted.
type Kind int

// The kinds of error.
const (
	Unread Kind = iota // an end is no quantity; Err says why
	Misfit             // an end is a quantity of none of the dimensions
	Mixed              // the ends are of two of them
)

// Error says why an amount is no range of what is wanted.
type Error struct {
	Kind Kind
	End  syntax.Quantity   // the end that is to blame
	Made quantity.Quantity // what it is; none where it is Unread
	Low  quantity.Quantity // of a high end, the low one; otherwise none
	Err  error             // of an end that is Unread
}

// Error is a sentence for programmers.
func (e *Error) Error() string {
	switch e.Kind {
	case Unread:
		return e.Err.Error()
	case Mixed:
		return e.Low.String() + " and " + e.Made.String() + " are of two dimensions"
	}
	return e.Made.String() + " is of no dimension that is wanted"
}

// Range makes a range of an amount, both ends of one of the dimensions; a single quantity
// is both of them. The low end may lie above the high one. It returns an *Error.
func Range(a syntax.Amount, wanted []quantity.Dimension) (quantity.Range, error) {
	low, err := end(a.LowEnd(), wanted, quantity.Quantity{})
	if err != nil {
		return quantity.Range{}, err
	}
	r := quantity.Range{Low: low, High: low}
	if a.High == nil {
		return r, nil
	}
	if r.High, err = end(*a.High, wanted, low); err != nil {
		return r, err
	}
	if r.High.Dimension != low.Dimension {
		return r, &Error{Kind: Mixed, End: *a.High, Made: r.High, Low: low}
	}
	return r, nil
}

func end(q syntax.Quantity, wanted []quantity.Dimension, low quantity.Quantity) (quantity.Quantity, error) {
	made, err := Quantity(q, wanted)
	if err != nil {
		return made, &Error{Kind: Unread, End: q, Low: low, Err: err}
	}
	as, ok := Fit(made, wanted)
	if !ok {
		return made, &Error{Kind: Misfit, End: q, Made: made, Low: low}
	}
	return as, nil
}
