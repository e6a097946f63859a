// Package tell puts what the simulator finds into sentences: troubles, assumptions,
// cautions, and why a forecast ended. The simulator gives their figures in SI; they are
// told in the units of the house, and beside a value that the file states as it is written.
package tell

import (
	"fmt"
	"reflect"

	"maltwright/lang/quantity"
)

// table has what is said of each type of an interface I, in the units of a house.
type table[I, S any] map[reflect.Type]func(I, quantity.System) S

// row is one type of a table.
type row[I, S any] struct {
	of  reflect.Type
	say func(I, quantity.System) S
}

// on makes the row of a type T.
func on[I, T, S any](say func(T, quantity.System) S) row[I, S] {
	return row[I, S]{reflect.TypeFor[T](), func(x I, units quantity.System) S { return say(any(x).(T), units) }}
}

func tableOf[I, S any](rows ...row[I, S]) table[I, S] {
	t := table[I, S]{}
	for _, r := range rows {
		t[r.of] = r.say
	}
	return t
}

// say says what the table has of a value. The second is false where a row is missing.
func (t table[I, S]) say(x I, units quantity.System) (S, bool) {
	if say := t[reflect.TypeOf(x)]; say != nil {
		return say(x, units), true
	}
	var none S
	return none, false
}

// untold stands where a table misses a row: the values are better than nothing.
func untold(x any) string { return fmt.Sprintf("%+v", x) }

// near gives the units to tell a temperature in beside one that is written.
func near(written quantity.Quantity, units quantity.System) quantity.System {
	if written.Dimension == quantity.Temperature && written.Unit() != "" {
		units.Fahrenheit = written.Unit() == "°F"
	}
	return units
}
