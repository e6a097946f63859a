package text

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/rivo/uniseg"

	"maltwright/cmd/words"
	"maltwright/lang/source"
)

// excerpt shows the line of a place with its words marked. In colour the words
// themselves are underlined; in plain text a line of marks stands below them. A
// place of more than one line is shown by its first.
func excerpt(p source.Place, o Options) string {
	number := p.File.Position(p.Start, source.Characters).Line
	line := p.File.Line(number)
	end := min(max(p.End, p.Start), line.End)
	before := lastOf(p.File.Text(source.Span{Start: line.Start, End: p.Start}))
	marked := firstOf(p.File.Text(source.Span{Start: p.Start, End: end}))
	after := firstOf(p.File.Text(source.Span{Start: end, End: line.End}))
	before = strings.TrimLeft(before, " ")
	label := fmt.Sprintf("%5d ", number)
	before, marked, after = clip(before, marked, after, o.width()-len(label)-len(margin))
	if o.Colour {
		return label + before + paint{true}.under(marked) + after + "\n"
	}
	marks := strings.Repeat(" ", uniseg.StringWidth(before)) + strings.Repeat("‾", max(1, uniseg.StringWidth(marked)))
	return label + before + marked + after + "\n" + margin + marks + "\n"
}

// shown makes text of a source line safe, with tabs as single spaces.
func shown(text string) string { return words.Safe(strings.ReplaceAll(text, "\t", " ")) }

// looked is how many bytes of a line are looked at on either side of the marked
// words. A line may be as long as a file; no terminal shows more of it.
const looked = 4096

func firstOf(text string) string {
	if len(text) <= looked {
		return shown(text)
	}
	end := looked
	for end > 0 && !utf8.RuneStart(text[end]) {
		end--
	}
	return shown(text[:end]) + "…"
}

func lastOf(text string) string {
	if len(text) <= looked {
		return shown(text)
	}
	start := len(text) - looked
	for start < len(text) && !utf8.RuneStart(text[start]) {
		start++
	}
	return "…" + shown(text[start:])
}

// clip cuts a line to the width, keeping the marked words and what stands nearest.
func clip(before, marked, after string, width int) (string, string, string) {
	if uniseg.StringWidth(marked) > width {
		return "", head(marked, width-1) + "…", ""
	}
	room := width - uniseg.StringWidth(marked)
	if uniseg.StringWidth(before)+uniseg.StringWidth(after) <= room {
		return before, marked, after
	}
	if most := room * 2 / 3; uniseg.StringWidth(before) > most {
		before = "…" + tail(before, most-1)
	}
	if rest := room - uniseg.StringWidth(before); uniseg.StringWidth(after) > rest {
		after = head(after, rest-1) + "…"
	}
	return before, marked, after
}

// head gives the longest start of the text that fits the width.
func head(text string, width int) string {
	end, used := 0, 0
	for g := uniseg.NewGraphemes(text); g.Next(); {
		if used += g.Width(); used > width {
			break
		}
		_, end = g.Positions()
	}
	return text[:end]
}

// tail gives the longest end of the text that fits the width.
func tail(text string, width int) string {
	start, over := 0, uniseg.StringWidth(text)-width
	for g := uniseg.NewGraphemes(text); over > 0 && g.Next(); {
		over -= g.Width()
		_, start = g.Positions()
	}
	return text[start:]
}
