package quantity

import "slices"

var unitsOfPounds = map[string]string{"lb": "lb", "oz": "lb", "cfm": "cfm", "ft2": "ft2", "in2": "ft2", "gal-us": "gal-us", "gal-imp": "gal-imp", "ft3": "ft3", "Btu/h": "Btu/h"}

// British is the unit of pounds, feet and gallons in which a share of this unit is told
// to those who write in it: lb for oz. It is "" for a unit that is not one of them.
func British(unit string) string { return unitsOfPounds[unit] }

// OfPounds tells whether a unit is one of those that a house of °F, pounds and feet writes.
func OfPounds(unit string) bool {
	return slices.Contains([]string{"°F", "lb", "oz", "gal-us", "gal-imp", "qt-us", "qt-imp", "pt-us", "pt-imp", "ft2", "in2", "ft3", "ft", findUnit("inch").Name, "cfm", "Btu/h"}, unit)
}
