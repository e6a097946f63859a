package text

import (
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
)

// onScale are lines for below the drained weight of a table: what else a scale may show
// then, with the words for it in front. Each is as wide as told, the last so many columns
// of it for the weight.
func (s *Sheet) onScale(on outlook.OnScale[answer.Kilograms], wide, weight int) (lines []string) {
	add := func(what, value string) {
		value = strings.Repeat(" ", max(0, weight-uniseg.StringWidth(value))) + value
		what = fitted(what, wide-weight-1)
		lines = append(lines, strings.Repeat(" ", wide-weight-1-uniseg.StringWidth(what))+what+" "+value)
	}
	if on.Gross != nil {
		add(words.Holding(on.Gross.In), words.Weighed(s.House, on.Gross.Weight))
	}
	if on.Bag != nil {
		add("the bag", words.Bag(s.House, *on.Bag))
	}
	return lines
}

// fitted is a text that is no wider than so many columns; what is too long ends in dots.
func fitted(text string, columns int) string {
	if uniseg.StringWidth(text) <= columns {
		return text
	}
	var b strings.Builder
	for g, left := uniseg.NewGraphemes(text), columns-1; g.Next(); {
		if left -= g.Width(); left < 0 {
			break
		}
		b.WriteString(g.Str())
	}
	return b.String() + "…"
}
