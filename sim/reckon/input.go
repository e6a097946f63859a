package reckon

import (
	"fmt"
	"strconv"

	"maltwright/lang/quantity"
)

// weight takes a weight above nothing, in kg.
func weight(what string, q quantity.Quantity) (float64, error) {
	if err := kind(what, q, quantity.Mass, "6 kg"); err != nil {
		return 0, err
	}
	if q.SI <= 0 {
		return 0, &Error{fmt.Sprintf("%s: %s is no weight of grain", what, q), "weigh again; it must be above nothing"}
	}
	return q.SI, nil
}

// moisture takes a moisture on either basis and gives the wet basis, 0 up to but
// not including 1: at 100 % there would be water alone.
func moisture(what string, q quantity.Quantity) (float64, error) {
	switch {
	case q.Dimension != quantity.DryShare:
		return share(what, q, "12.4 %")
	case q.SI < 0:
		return 0, &Error{fmt.Sprintf("%s: %s is below 0 %%", what, q), "weigh or read it again"}
	}
	return q.SI / (1 + q.SI), nil
}

// share takes a share of 0 up to but not including 1.
func share(what string, q quantity.Quantity, sample string) (float64, error) {
	if err := kind(what, q, quantity.Share, sample); err != nil {
		return 0, err
	}
	if q.SI < 0 || q.SI >= 1 {
		return 0, &Error{fmt.Sprintf("%s: %s is outside 0 to below 100 %%", what, q), "weigh or read it again"}
	}
	return q.SI, nil
}

// lost takes the share of the dry matter that was lost; nil is none.
func lost(q *quantity.Quantity) (float64, error) {
	if q == nil {
		return 0, nil
	}
	return share("dry matter lost", *q, "5 %")
}

func kind(what string, q quantity.Quantity, d quantity.Dimension, sample string) error {
	switch q.Dimension {
	case d:
		return nil
	case quantity.Number:
		return &Error{fmt.Sprintf("%s: %s has no unit", what, q), "write it with its unit, such as " + sample}
	}
	return &Error{fmt.Sprintf("%s: %s is not a %s", what, q, d), fmt.Sprintf("write a %s such as %s", d, sample)}
}

// Percent is a value to show shares like: per cent with a digit behind the point,
// as near as weighings of grain come.
func Percent() quantity.Quantity { return in("%", 1) }

// in is a value of the unit written with so many digits. The units asked for here
// are of the language; any other would show as a plain number.
func in(unit string, digits int) quantity.Quantity {
	q, err := quantity.Make(quantity.Part{Number: strconv.FormatFloat(0, 'f', digits, 64), Unit: unit})
	if err != nil {
		return quantity.Quantity{}
	}
	return q
}
