package quantity

import (
	"fmt"
	"strings"
)

// Part is one number with its unit, as written: "8 1/3" and "lb". The unit may be
// empty.
type Part struct{ Number, Unit string }

// Quantity is a number with its unit. Make and Parse make one.
type Quantity struct {
	SI        float64 // in the SI unit of the dimension
	Dimension Dimension
	first     Part // as written, the unit in its printed spelling
	more      []Part
}

// mostParts is how many parts a quantity may have: 1 week 2 days 3 h 4 min.
const mostParts = 4

// Make makes a quantity from its parts. Several parts are of one dimension, with
// falling units, and all but the last are whole: 5 lb 4 oz, 1 h 30 min. It
// returns an *Error that names the part to blame.
func Make(parts ...Part) (Quantity, error) {
	if len(parts) == 0 || len(parts) > mostParts {
		return Quantity{}, &Error{Kind: Missing, Message: fmt.Sprintf("a quantity has 1 to %d parts", mostParts), Hint: "write a number and its unit"}
	}
	var q Quantity
	size := 0.0
	for i, p := range parts {
		n, kind := parseNumber(p.Number)
		if kind != None {
			return Quantity{}, numberError(kind, i, p.Number)
		}
		u := &plain
		if p.Unit != "" {
			if u = lookup(p.Unit); u == nil {
				return Quantity{}, unknownUnit(i, p.Unit)
			}
		}
		if i > 0 {
			if err := follows(parts, i, q.Dimension, u, size); err != nil {
				return Quantity{}, err
			}
		}
		q.add(i, p, u, n)
		size = u.Factor
	}
	return q, nil
}

// plain is the unit of a number without one.
var plain = Unit{Dimension: Number, Factor: 1}

func (q *Quantity) add(i int, p Part, u *Unit, n float64) {
	written := Part{p.Number, u.Name}
	if i == 0 {
		q.SI, q.Dimension, q.first = n*u.Factor+u.Offset, u.Dimension, written
		return
	}
	if q.first.Number[0] == '-' || strings.HasPrefix(q.first.Number, "\u2212") {
		n = -n
	}
	q.SI += n * u.Factor
	q.more = append(q.more, written)
}

// follows checks a further part against the one before it.
func follows(parts []Part, i int, d Dimension, u *Unit, size float64) error {
	before := parts[i-1]
	switch {
	case u.Dimension != d || u.Dimension == Number:
		return &Error{Kind: MixedDimensions, Part: i,
			Message: fmt.Sprintf("%s %s is a %s, and %s %s is a %s", before.Number, before.Unit, d, parts[i].Number, parts[i].Unit, u.Dimension),
			Hint:    "the parts of one quantity are of one kind, such as 1 h 30 min"}
	case u.Offset != 0 || u.Factor >= size || d == Share || d == DryShare || d == Count:
		return &Error{Kind: WrongOrder, Part: i,
			Message: fmt.Sprintf("%s does not stand behind %s in one quantity", parts[i].Unit, before.Unit),
			Hint:    "write the larger unit first, each unit once, such as 5 lb 4 oz"}
	case !allDigits(strings.TrimLeft(before.Number, "-\u2212")):
		return &Error{Kind: WrongOrder, Part: i - 1,
			Message: fmt.Sprintf("%s %s is no whole number, yet a smaller unit follows", before.Number, before.Unit),
			Hint:    "only the last part may have a fraction, such as 1 h 30 min"}
	case strings.HasPrefix(parts[i].Number, "-") || strings.HasPrefix(parts[i].Number, "\u2212"):
		return &Error{Kind: NotANumber, Part: i, Message: fmt.Sprintf("%s stands behind another part and has a sign", parts[i].Number),
			Hint: "put the sign in front of the first part"}
	}
	return nil
}

// Unit is the printed spelling of the first unit, "" for a plain number.
func (q Quantity) Unit() string { return q.first.Unit }

// String is the quantity as it was written, with the printed spelling of its units.
func (q Quantity) String() string {
	text := q.first.text()
	for _, p := range q.more {
		text += " " + p.text()
	}
	return text
}

func (p Part) text() string {
	number := strings.Replace(p.Number, "\u2212", "-", 1)
	switch {
	case p.Unit == "":
		return number
	case strings.Trim(number, "0") == "1" && (p.Unit == "days" || p.Unit == "weeks" || p.Unit == "corns"):
		return number + " " + strings.TrimSuffix(p.Unit, "s")
	}
	return number + " " + p.Unit
}

// As reads the quantity as one of another dimension, where that makes sense: a
// temperature as a difference (its offset falls away) and back, a share of the
// whole weight as one of the dry matter and back, a count as a plain number and
// back. Any other change is an error.
func (q Quantity) As(d Dimension) (Quantity, error) {
	from := q.Dimension
	if from == d {
		return q, nil
	}
	u := q.unit()
	switch {
	case from == Temperature && d == TemperatureDifference:
		q.SI -= u.Offset
	case from == TemperatureDifference && d == Temperature:
		q.SI += u.Offset
	case from == DryShare && d == Share && q.SI > -1:
		q.SI = q.SI / (1 + q.SI)
	case from == Share && d == DryShare && q.SI < 1:
		q.SI = q.SI / (1 - q.SI)
	case from == Number && d == Count || from == Count && d == Number:
	default:
		return q, &Error{Kind: MixedDimensions, Message: fmt.Sprintf("%s is a %s, not a %s", q, from, d), Hint: "write a unit of the right kind"}
	}
	q.Dimension = d
	return q, nil
}

func (q Quantity) unit() *Unit {
	if u := bySpelling[q.first.Unit]; u != nil {
		return u
	}
	return &plain
}
