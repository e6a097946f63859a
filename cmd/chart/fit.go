package chart

import (
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/lang/source"
)

// ellipsis stands where a name was cut off.
const ellipsis = "…"

// fitted is a text cut to a width, between letters as people count them; "" where less than three letters of it are left.
func fitted(m Measure, text string, size float64, bold bool, width float64) string {
	text = source.Safe(text)
	if m.Width(text, size, bold) <= width {
		return text
	}
	kept, letters := "", 0
	for rest, state := text, -1; rest != ""; {
		var cluster string
		cluster, rest, _, state = uniseg.FirstGraphemeClusterInString(rest, state)
		if m.Width(kept+cluster+ellipsis, size, bold) > width {
			break
		}
		kept, letters = kept+cluster, letters+1
	}
	if letters < 3 {
		return ""
	}
	return strings.TrimRight(kept, " ") + ellipsis
}

// wrapped breaks a text between words into lines of a width; a word that is wider is cut.
func wrapped(m Measure, text string, size float64, bold bool, width float64) (lines []string) {
	line := ""
	for _, word := range strings.Fields(source.Safe(text)) {
		word = fitted(m, word, size, bold, width)
		with := strings.TrimLeft(line+" "+word, " ")
		if line != "" && m.Width(with, size, bold) > width {
			lines, with = append(lines, line), word
		}
		line = with
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
