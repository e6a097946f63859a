// Package nearest finds the known word that somebody most likely meant.
package nearest

import (
	"slices"
	"strings"
)

// Word gives the word of the list that is nearest to the one written, if one is
// near enough: at most one slip for every three letters, where a slip is a letter
// too many, too few, wrong, or swapped with its neighbour. Of equals the first
// in the list wins.
func Word(written string, among []string) (string, bool) {
	best, at := len([]rune(written))/3+1, -1
	if len(written) > 40 {
		return "", false
	}
	for i, word := range among {
		if d := distance([]rune(written), []rune(word)); d < best || d == best && at < 0 && d == 1 {
			best, at = d, i
		}
	}
	if at < 0 || among[at] == written {
		return "", false
	}
	return among[at], true
}

// shortest is the letters of a word in which one slip leaves enough to know it by.
const shortest = 3

// Only gives the word of the list that was meant, where no other can be: it is near
// enough, no other is as near, neither it nor what is written is so short that any
// word could have been meant, and no digit would be lost, which is rather a value that
// was written without its blank, as in soak7 h.
func Only(written string, among []string) (string, bool) {
	meant, ok := Word(written, among)
	if !ok || len([]rune(meant)) < shortest || len([]rune(written)) < shortest || strings.ContainsAny(written, "0123456789") {
		return "", false
	}
	best := distance([]rune(written), []rune(meant))
	for _, word := range among {
		if word != meant && distance([]rune(written), []rune(word)) <= best {
			return "", false
		}
	}
	return meant, true
}

// distance is the number of slips between two words (optimal string alignment).
func distance(a, b []rune) int {
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row[0] = i + 1
		for j := range b {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			row[j+1] = slices.Min([]int{last[j+1] + 1, row[j] + 1, last[j] + cost})
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
