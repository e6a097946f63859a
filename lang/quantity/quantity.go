package quantity

import (
	"fmt"
	"strings"
)

// Part is one number with its unit, as written: "8 1/3" and "lb". The unit may be
// empty.
type Part struct{ Number, Unit string }

// Quantity is a number with its unit. Make, Parse and In make one; the zero value
// is the plain number 0.
type Quantity struct {
	SI        float64 // in the SI unit of the dimension
	Dimension Dimension
	first     written
	more      []written // the further parts of 5 lb 4 oz
}

// written is one part as it is printed again.
type written struct {
	number string
	unit   *Unit // nil for a plain number
}

// mostParts is how many parts a quantity may have: 1 week 2 days 3 h 4 min.
const mostParts = 4

// Make makes a quantity from its parts. Of several parts, as in 5 lb 4 oz or 1 h
// 30 min, all are weights, or times, volumes or lengths; the units fall; all but
// the last are whole numbers; each is less than one of the unit before it; and a
// minus sign in front of the first counts for all. A temperature may not be below
// absolute zero. Make returns an *Error that names the part to blame.
func Make(parts ...Part) (Quantity, error) {
	q, err := assemble(parts)
	if err == nil && q.SI < 0 && q.Dimension == Temperature {
		return Quantity{}, belowZero(parts[0])
	}
	return q, err
}

// Difference makes a quantity as Make does, but where it would be a temperature it
// is a difference of temperatures, K, which may be below nothing in every unit.
func Difference(parts ...Part) (Quantity, error) {
	q, err := assemble(parts)
	if err == nil && q.Dimension == Temperature {
		return q.As(TemperatureDifference)
	}
	return q, err
}

func assemble(parts []Part) (Quantity, error) {
	if len(parts) == 0 || len(parts) > mostParts {
		return Quantity{}, wrongCount(parts)
	}
	n, u, err := read(parts, 0)
	if err != nil {
		return Quantity{}, err
	}
	q := Quantity{n*u.Factor + u.Offset, u.Dimension, written{parts[0].Number, u}, nil}
	if u == &plain {
		q.first.unit = nil
	}
	if len(parts) > 1 {
		return q.extend(parts, n)
	}
	return q, nil
}

// read reads one of the parts.
func read(parts []Part, i int) (float64, *Unit, error) {
	n, kind := parseNumber(parts[i].Number)
	if kind != NoError {
		return 0, nil, numberError(kind, i, parts[i])
	}
	if parts[i].Unit == "" {
		return n, &plain, nil
	}
	u := findUnit(parts[i].Unit)
	if u == nil {
		return 0, nil, noUnit(i, parts[i].Unit)
	}
	return n, u, nil
}

// extend adds the further parts to a quantity made of the first.
func (q Quantity) extend(parts []Part, first float64) (Quantity, error) {
	sign := 1.0
	if _, negative := cutSign(parts[0].Number); negative {
		sign = -1
	}
	q.more = make([]written, 0, len(parts)-1)
	for i := 1; i < len(parts); i++ {
		n, u, err := read(parts, i)
		if err != nil {
			return Quantity{}, err
		}
		if err := follows(parts, i, n, q.lastUnit(), u); err != nil {
			return Quantity{}, err
		}
		q.SI += sign * n * u.Factor
		q.more = append(q.more, written{parts[i].Number, u})
	}
	return q, nil
}

func (q *Quantity) lastUnit() *Unit {
	if n := len(q.more); n > 0 {
		return q.more[n-1].unit
	}
	return q.unit()
}

// unit is the first unit, and a plain one for a plain number.
func (q *Quantity) unit() *Unit {
	if q.first.unit == nil {
		return &plain
	}
	return q.first.unit
}

// follows checks a further part against the one before it.
func follows(parts []Part, i int, n float64, last, u *Unit) error {
	before, here := parts[i-1], parts[i]
	_, negative := cutSign(here.Number)
	whole, _ := cutSign(before.Number)
	switch {
	case last == &plain || u == &plain:
		return partWithoutUnit(parts, i, last)
	case u.Dimension != last.Dimension:
		return &Error{Kind: MixedDimensions, Part: i,
			Message: fmt.Sprintf("%s is %s, and %s is %s", before.asText(), last.Dimension.withArticle(), here.asText(), u.Dimension.withArticle()),
			Hint:    "the parts of one quantity are of one kind, such as 1 h 30 min"}
	case u.Dimension.row().compound < 0:
		return outOfOrder(i, fmt.Sprintf("%s is one number with its unit, and %s follows", u.Dimension.withArticle(), here.asText()),
			"write the two apart, each where it belongs")
	case u.Factor >= last.Factor:
		return outOfOrder(i, fmt.Sprintf("%s does not stand behind %s in one quantity", here.Unit, before.Unit),
			"write the larger unit first and each unit once, such as 5 lb 4 oz")
	case !allDigits(whole):
		return outOfOrder(i-1, fmt.Sprintf("%s is no whole number, and %s follows", before.asText(), here.asText()),
			"only the last part may have a fraction, such as 1 h 30 min")
	case negative:
		return outOfOrder(i, fmt.Sprintf("%s stands behind another part and has a sign", here.asText()),
			"put the sign in front of the first part")
	case n*u.Factor >= last.Factor*(1-1e-9):
		return outOfOrder(i, fmt.Sprintf("%s is one %s or more", here.asText(), last.single()),
			fmt.Sprintf("add it to the part before, so that less than one %s is left", last.single()))
	}
	return nil
}

func (u *Unit) single() string {
	if u.One != "" {
		return u.One
	}
	return u.Name
}

func outOfOrder(part int, message, hint string) error {
	return &Error{Kind: WrongOrder, Part: part, Message: message, Hint: hint}
}

func partWithoutUnit(parts []Part, i int, last *Unit) error {
	e := &Error{Kind: MissingUnit, Part: i, Hint: "write every part with its unit, such as 5 lb 4 oz"}
	if last == &plain {
		e.Part = i - 1
		e.Hint += "; a large number has no gaps, such as 1200 kg"
	}
	if first := Spell(parts[e.Part].Number); e.Part < i && strings.Contains(first, "/") && !strings.Contains(first, " ") && allDigits(parts[i].Number) {
		e.Hint = fmt.Sprintf("a fraction stands behind its whole number: write %s %s if that is meant, or each part with its unit",
			parts[i].Number, strings.TrimSpace(first+" "+parts[i].Unit))
	}
	e.Message = fmt.Sprintf("%s has no unit", parts[e.Part].asText())
	return e
}

func wrongCount(parts []Part) error {
	if len(parts) == 0 {
		return &Error{Kind: MissingUnit, Message: "no quantity is given", Hint: "write a number and its unit, such as 8 h"}
	}
	return &Error{Kind: TooLong, Part: mostParts, Message: fmt.Sprintf("a quantity has at most %d parts", mostParts),
		Hint: "write it in fewer units"}
}

func belowZero(p Part) error {
	return &Error{Kind: TooLarge, Message: fmt.Sprintf("%s is colder than anything can be", p.asText()),
		Hint: "absolute zero is -273.15 °C or -459.67 °F"}
}
