package words

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/rivo/uniseg"
)

// Safe gives the text with every character that could act on a terminal, or that
// cannot be seen, written out: <U+001B> for an escape, <U+202E> for a turn of
// direction, <byte 0xB0> for a byte that is no text.
func Safe(text string) string {
	if clean(text) {
		return text
	}
	var b strings.Builder
	for len(text) > 0 {
		r, size := utf8.DecodeRuneInString(text)
		switch {
		case r == utf8.RuneError && size <= 1:
			fmt.Fprintf(&b, "<byte 0x%02X>", text[0])
		case acts(r):
			fmt.Fprintf(&b, "<U+%04X>", r)
		default:
			b.WriteString(text[:size])
		}
		text = text[size:]
	}
	return b.String()
}

// Text gives the name of a file as text for other programs: as it is, but with bytes that
// are no text written out as Safe does, since nothing else may stand in JSON.
func Text(name string) string {
	if utf8.ValidString(name) {
		return name
	}
	var b strings.Builder
	for len(name) > 0 {
		r, size := utf8.DecodeRuneInString(name)
		if r == utf8.RuneError && size <= 1 {
			fmt.Fprintf(&b, "<byte 0x%02X>", name[0])
		} else {
			b.WriteString(name[:size])
		}
		name = name[size:]
	}
	return b.String()
}

func clean(text string) bool {
	return utf8.ValidString(text) && !strings.ContainsFunc(text, acts)
}

func acts(r rune) bool {
	return unicode.IsControl(r) || unicode.Is(unicode.Cf, r) && r != '\u200d' || r == '\u2028' || r == '\u2029'
}

// Wrap breaks text into lines no wider than width, between words. A word wider
// than that stands on a line of its own, and a number is not parted from its unit.
func Wrap(text string, width int) []string {
	var lines []string
	line, used := "", 0
	for _, word := range glued(strings.Fields(text)) {
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

// glued joins each number with the unit behind it.
func glued(words []string) []string {
	var out []string
	for _, w := range words {
		if n := len(out); n > 0 && isNumber(out[n-1]) && len([]rune(w)) <= longestUnit {
			out[n-1] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

// longestUnit is how long a word behind a number may be to count as its unit, with
// a comma or stop behind it.
const longestUnit = 4

func isNumber(word string) bool {
	return strings.Trim(word, "0123456789.") == "" && word != "."
}
