package quantity

import (
	"fmt"
	"strings"
)

// Kind is what is wrong with a quantity.
type Kind int

// The kinds of error. None is no error.
const (
	None            Kind = iota
	NotANumber           // the number cannot be read
	DecimalComma         // 12,4: a comma might be a decimal point or part thousands
	TooLong              // more digits than anything measured has
	UnknownUnit          // the unit is not of the language
	MixedDimensions      // 5 lb 4 min
	WrongOrder           // 30 min 1 h, 1.5 h 30 min
	Missing              // no quantity at all, or a part without a unit
)

// Error says what is wrong with a quantity, in words for the maltster.
type Error struct {
	Kind    Kind
	Part    int    // the part that is to blame, from 0
	Message string // what is wrong
	Hint    string // what to do
	Fix     string // the certain repair of the part or unit, or ""
}

func (e *Error) Error() string {
	if e.Hint == "" {
		return e.Message
	}
	return e.Message + "; " + e.Hint
}

func numberError(kind Kind, part int, text string) *Error {
	e := &Error{Kind: kind, Part: part}
	switch kind {
	case DecimalComma:
		point := strings.Replace(text, ",", ".", 1)
		e.Message = fmt.Sprintf("%s has a comma, which could be a decimal point or part thousands", text)
		e.Hint = fmt.Sprintf("write %s, or leave the comma out", point)
	case TooLong:
		e.Message = fmt.Sprintf("a number of %d characters is more than can be measured", len(text))
		e.Hint = "write it with the digits that matter"
	default:
		e.Message = fmt.Sprintf("%q is no number", text)
		e.Hint = "write it as 12, 12.4, 3/4 or 8 1/3"
	}
	return e
}

func unknownUnit(part int, spelling string) *Error {
	e := &Error{Kind: UnknownUnit, Part: part, Message: fmt.Sprintf("%q is no unit of the language", spelling),
		Hint: "see the units with explain units"}
	if spelling == "gal" || spelling == "gallon" || spelling == "gallons" {
		e.Hint = "say which gallon: gal-us (3.785 l) or gal-imp (4.546 l)"
		return e
	}
	if meant, ok := Nearest(spelling); ok {
		e.Hint = fmt.Sprintf("did you mean %s?", meant)
		e.Fix = meant
	}
	return e
}
