package quantity

import "fmt"

// As reads the quantity as one of another dimension, where that makes sense; it
// stays written as it was.
//
//   - A temperature becomes a difference of temperatures: the offset of °C or °F
//     falls away, and 20 °F is 11.11 K. And back.
//   - A share of the dry matter X becomes one of the whole weight, w = X/(1 + X),
//     and back, X = w/(1 − w); for w below 1 and X above −1.
//   - A plain number becomes a count, and back.
//
// Any other change is an *Error of kind WrongDimension.
func (q Quantity) As(d Dimension) (Quantity, error) {
	from, offset := q.Dimension, q.unit().Offset
	switch {
	case from == d:
		return q, nil
	case from == Temperature && d == TemperatureDifference:
		q.SI = q.difference()
	case from == TemperatureDifference && d == Temperature && q.SI+offset >= 0:
		q.SI += offset
	case from == DryShare && d == Share && q.SI > -1:
		q.SI /= 1 + q.SI
	case from == Share && d == DryShare && q.SI < 1:
		q.SI /= 1 - q.SI
	case from == Number && d == Count || from == Count && d == Number:
	default:
		return q, noDimension(q, d)
	}
	q.Dimension = d
	return q, nil
}

// WrittenAs is the dimension of the unit that it was written in, from which As may have
// changed its own.
func (q Quantity) WrittenAs() Dimension { return q.unit().Dimension }

// difference is the SI value of a temperature without its offset: from the number
// as written where that is the value, so that 10 °C is 10 K to the last bit.
func (q *Quantity) difference() float64 {
	u := q.unit()
	if n, kind := parseNumber(q.first.number); kind == NoError && n*u.Factor+u.Offset == q.SI {
		return n * u.Factor
	}
	return q.SI - u.Offset
}

func noDimension(q Quantity, d Dimension) error {
	e := &Error{Kind: WrongDimension, Message: fmt.Sprintf("%s is %s, not %s", q, q.Dimension.withArticle(), d.withArticle()),
		Hint: "write it without a unit"}
	switch {
	case q.Dimension == Share && d == DryShare:
		e.Message = fmt.Sprintf("%s of the whole weight leaves no dry matter to be a share of", q)
		e.Hint = "write a share below 100 %"
	case q.Dimension == DryShare && d == Share:
		e.Message = fmt.Sprintf("%s takes away more than there is", q)
		e.Hint = "write a share above nothing"
	case q.Dimension == Number && d.example() != "":
		e.Message = fmt.Sprintf("%s has no unit, and %s needs one", q, d.withArticle())
		e.Hint = "write the unit behind it, such as " + d.example()
	case d.example() != "":
		e.Hint = fmt.Sprintf("write %s with its unit, such as %s", d.withArticle(), d.example())
	}
	return e
}

// example is the printed spelling of a unit of the dimension.
func (d Dimension) example() string {
	switch d {
	case Time:
		return "h"
	case Mass:
		return "kg"
	case Volume:
		return "l"
	case Length:
		return "cm"
	case Area:
		return "m2"
	case TemperatureDifference:
		return "°C"
	case Energy:
		return "kWh"
	}
	for i := range unitTable {
		if unitTable[i].Dimension == d {
			return unitTable[i].Name
		}
	}
	return ""
}
