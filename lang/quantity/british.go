package quantity

var unitsOfPounds = map[string]string{"lb": "lb", "oz": "lb", "cfm": "cfm", "ft2": "ft2", "in2": "ft2", "gal-us": "gal-us", "gal-imp": "gal-imp", "ft3": "ft3", "Btu/h": "Btu/h"}

// British is the unit of pounds, feet and gallons in which a share of this unit is told
// to those who write in it: lb for oz. It is "" for a unit that is not one of them.
func British(unit string) string { return unitsOfPounds[unit] }
