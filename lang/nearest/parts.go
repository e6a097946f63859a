package nearest

import (
	"slices"
	"strings"
	"unicode"
)

// Parts gives the names of the list of which a part was written, or which were written with
// more: "tub" of "blue tub", "the blue tub". Capitals and signs do not count.
func Parts(written string, among []string) (list []string) {
	mine := words(written)
	for _, name := range among {
		theirs := words(name)
		if len(mine) > 0 && len(theirs) > 0 && name != written && (within(mine, theirs) || within(theirs, mine)) {
			list = append(list, name)
		}
	}
	return list
}

func words(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// within tells whether each of some words stands among others.
func within(few, many []string) bool {
	return !slices.ContainsFunc(few, func(w string) bool { return !slices.Contains(many, w) })
}
