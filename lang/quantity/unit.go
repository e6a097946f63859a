package quantity

import "slices"

// Unit is a unit of the language. The SI value of a number n written in it is
// n·Factor + Offset, in the SI unit of its Dimension.
type Unit struct {
	Name      string   // the spelling that is printed
	One       string   // the spelling for a single one, where it is another: day
	Aliases   []string // other spellings that are read
	Dimension Dimension
	Factor    float64
	Offset    float64 // not zero for the temperatures with a zero of their own
	Doc       string  // one line
	decimals  int     // the most digits behind the point worth showing
}

// plain is the unit of a number without one.
var plain = Unit{Dimension: Number, Factor: 1, Doc: "a plain number", decimals: 2}

// bySpelling finds a unit by any spelling.
var bySpelling = func() map[string]*Unit {
	m := make(map[string]*Unit, 4*len(unitTable))
	for i := range unitTable {
		for spelling := range unitTable[i].spellings {
			m[spelling] = &unitTable[i]
		}
	}
	return m
}()

// spellings goes over every spelling of the unit, the printed one first.
func (u *Unit) spellings(yield func(string) bool) {
	if !yield(u.Name) || u.One != "" && !yield(u.One) {
		return
	}
	for _, a := range u.Aliases {
		if !yield(a) {
			return
		}
	}
}

// Lookup finds a unit by any of its spellings. Spaces within count as one.
func Lookup(spelling string) (Unit, bool) {
	u := findUnit(spelling)
	if u == nil {
		return Unit{}, false
	}
	return u.clone(), true
}

// Units lists every unit, those of a dimension together.
func Units() []Unit {
	list := make([]Unit, len(unitTable))
	for i := range unitTable {
		list[i] = unitTable[i].clone()
	}
	return list
}

func (u *Unit) clone() Unit {
	c := *u
	c.Aliases = slices.Clone(u.Aliases)
	return c
}

func findUnit(spelling string) *Unit {
	if u := bySpelling[spelling]; u != nil {
		return u
	}
	if len(spelling) > longestUnit {
		return nil
	}
	return bySpelling[tidy(spelling)]
}

// longestUnit is more bytes than any spelling has, with room for spaces.
const longestUnit = 40
