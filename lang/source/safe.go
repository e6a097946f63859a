package source

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
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
