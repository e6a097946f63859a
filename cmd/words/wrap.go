package words

import (
	"slices"
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/lang/source"
)

// Safe gives a text of a file as it may be shown: see source.Safe.
func Safe(text string) string { return source.Safe(text) }

// SafeLines makes a text of several lines safe, tabs as blanks.
func SafeLines(text string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = Safe(strings.ReplaceAll(lines[i], "\t", "    "))
	}
	return strings.Join(lines, "\n")
}

// Wrap breaks text into lines no wider than width, between words. A word wider
// than that stands on a line of its own, and a number is not parted from its unit.
func Wrap(text string, width int) []string {
	var lines []string
	line, used := "", 0
	for _, word := range Glued(strings.Fields(text)) {
		w := uniseg.StringWidth(word)
		if used > 0 && used+1+w > width {
			lines, line, used = append(lines, line), "", 0
		}
		if used > 0 {
			line, used = line+" ", used+1
		}
		line, used = line+word, used+w
	}
	return append(lines, line)
}

// Bound is a text whose numbers are not parted from their units by what wraps it: no-break spaces join them.
func Bound(text string) string {
	words := Glued(strings.Fields(text))
	for i, w := range words {
		words[i] = strings.ReplaceAll(w, " ", "\u00a0")
	}
	return strings.Join(words, " ")
}

// Glued joins each number with the unit behind it, and the parts of 6 d 22 h or 5 lb 4 oz.
func Glued(words []string) []string {
	var out []string
	for _, w := range words {
		if n := len(out); n > 0 && isNumber(out[n-1]) && len([]rune(w)) <= longestUnit {
			out[n-1] += " " + w
			if n > 1 && goOn(out[n-2], out[n-1]) {
				out = append(out[:n-2], out[n-2]+" "+out[n-1])
			}
			continue
		}
		out = append(out, w)
	}
	return out
}

// smaller are the units of a further part of a quantity, by the unit in front of it.
var smaller = map[string][]string{"d": {"h", "min"}, "h": {"min"}, "lb": {"oz"}}

// goOn tells whether a part of a quantity belongs to the one in front of it.
func goOn(before, part string) bool {
	unit := strings.Trim(part[strings.LastIndex(part, " ")+1:], ".,;:()")
	return slices.Contains(smaller[before[strings.LastIndex(before, " ")+1:]], unit) && strings.Contains(before, " ")
}

// longestUnit is how long a word behind a number may be to count as its unit, with
// a comma or stop behind it.
const longestUnit = 7

// isNumber tells whether a word is a number, or two with a dash between: 14–17.
func isNumber(word string) bool {
	return strings.Trim(word, "0123456789.–") == "" && strings.ContainsAny(word, "0123456789")
}
