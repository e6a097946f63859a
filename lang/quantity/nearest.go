package quantity

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// nearest finds the unit that was meant, and whether that is certain: the same
// letters in another case, with dots or a plural, or one slip in a long word.
func nearest(spelling string) (u *Unit, certain bool) {
	if len(spelling) > longestUnit {
		return nil, false
	}
	folded := fold(tidy(spelling))
	if u := byFolded[folded]; u != nil {
		return u, utf8.RuneCountInString(spelling) > 1 && !megaOrMilli(spelling, u)
	}
	u, rivals := oneSlipAway(folded)
	long := utf8.RuneCountInString(folded) >= 4
	if u == nil || rivals && !long {
		return nil, false
	}
	return u, long && !rivals
}

// megaOrMilli tells whether a capital M leaves open which of the two was meant.
func megaOrMilli(spelling string, u *Unit) bool {
	return strings.HasPrefix(spelling, "M") && strings.HasPrefix(u.Name, "m")
}

// byFolded finds a unit by a folded spelling; nil where two units fold alike.
var byFolded = func() map[string]*Unit {
	m := map[string]*Unit{}
	for i := range unitTable {
		for spelling := range unitTable[i].spellings {
			folded := fold(spelling)
			if u, taken := m[folded]; taken && u != &unitTable[i] {
				m[folded] = nil
				continue
			}
			m[folded] = &unitTable[i]
		}
	}
	return m
}()

var plainLetters = strings.NewReplacer(" per ", "/", " ", "", ".", "", "^", "", "-", "", "²", "2", "³", "3",
	"°", "", "º", "")

// fold takes away what people vary without meaning anything by it: case, dots,
// spaces, the degree sign, a plural; and writes both sides of a stroke alike, so
// that litres/sec folds as l/s.
func fold(spelling string) string {
	sides := strings.Split(plainLetters.Replace(strings.TrimSpace(spelling)), "/")
	for i, side := range sides {
		if u := bySpelling[side]; u != nil && len(sides) > 1 {
			side = plainLetters.Replace(u.Name)
		}
		side = strings.ToLower(side)
		if len(side) > 2 {
			side = strings.TrimSuffix(side, "s")
		}
		sides[i] = side
	}
	return strings.Join(sides, "/")
}

// foldedSpelling is one spelling of a unit as fold leaves it.
type foldedSpelling struct {
	letters []rune
	unit    *Unit
}

var foldedSpellings = func() (list []foldedSpelling) {
	for i := range unitTable {
		for spelling := range unitTable[i].spellings {
			list = append(list, foldedSpelling{[]rune(fold(spelling)), &unitTable[i]})
		}
	}
	return list
}()

// oneSlipAway finds the first unit one slip from the folded spelling, and whether
// another unit is as near.
func oneSlipAway(folded string) (first *Unit, rivals bool) {
	letters := []rune(folded)
	for _, s := range foldedSpellings {
		if !oneSlip(letters, s.letters) {
			continue
		}
		if first != nil && first != s.unit {
			return first, true
		}
		first = s.unit
	}
	return first, false
}

// oneSlip tells whether the words differ by one letter too many, too few or wrong,
// or by two neighbours swapped.
func oneSlip(a, b []rune) bool {
	if len(a) < 2 || len(b) < 2 {
		return false
	}
	for len(a) > 0 && len(b) > 0 && a[0] == b[0] {
		a, b = a[1:], b[1:]
	}
	for len(a) > 0 && len(b) > 0 && a[len(a)-1] == b[len(b)-1] {
		a, b = a[:len(a)-1], b[:len(b)-1]
	}
	switch {
	case len(a) == 2 && len(b) == 2:
		return a[0] == b[1] && a[1] == b[0]
	default:
		return len(a) <= 1 && len(b) <= 1
	}
}

// latin1 is the degree sign of a file that was not saved as UTF-8: it is read, so
// that such a file is told about its bytes and not about its units too.
const latin1 = "\xb0"

// tidy writes a spelling with single spaces and a proper degree sign.
func tidy(spelling string) string {
	if rest, ok := strings.CutPrefix(spelling, latin1); ok {
		spelling = "°" + rest
	}
	words := strings.Fields(spelling)
	if len(words) > 1 && slices.Contains(degrees, words[0]) {
		return "°" + strings.Join(words[1:], " ")
	}
	return strings.Join(words, " ")
}

// degrees are what is written for the degree sign with a space behind it: deg F, ° F.
var degrees = []string{"°", "º", "deg", "degree", "degrees"}

// Degrees lists what may stand for the degree sign in front of C or F.
func Degrees() []string { return slices.Clone(degrees) }
