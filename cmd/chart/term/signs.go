package term

import (
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/chart"
	"maltwright/cmd/words"
)

// signs are what a terminal can show.
type signs struct {
	across, down int // dots to a cell

	axis, night, tick, nightTick string // of the axis of time
	side, value                  string // of that of values, without and with a label
	stage, stageEnd              string // in front of the name of a stage, and behind it
	now                          string
	measured                     map[chart.Shape]string
	doubted, above, below        string
	gate                         string // a sample of its row
	dots                         string // of a band, in the legend
	course                       string // a line that has no letter, in the legend
	bar                          string
	shades                       []string // of a field, from the least on
	ranged                       string
	plain                        bool
}

var fineSigns = signs{
	across: 2, down: 4,
	axis: "─", night: "━", tick: "┬", nightTick: "┯", side: "│", value: "┤", stage: "└", stageEnd: "┘", now: "┊",
	measured: map[chart.Shape]string{chart.Disc: "●", chart.Square: "■", chart.Triangle: "▲", chart.Diamond: "◆", chart.Post: "○", chart.Tip: "▼"},
	doubted:  "×", above: "↑", below: "↓", gate: "⠒ ⠒", dots: "⠅⠅", course: "⠒⠒", bar: "█", shades: []string{"·", "░", "▒", "▓", "█"}, ranged: "–",
}

var plainSigns = signs{
	across: 1, down: 1,
	axis: "-", night: "=", tick: "+", nightTick: "+", side: "|", value: "+", stage: "|", stageEnd: "|", now: ":",
	measured: map[chart.Shape]string{chart.Disc: "O", chart.Square: "#", chart.Triangle: "A", chart.Diamond: "V", chart.Post: "0", chart.Tip: "Y"},
	doubted:  "X", above: "^", below: "v", gate: "- -", dots: "..", course: "**", bar: "#", shades: []string{".", ":", "+", "#", "@"}, ranged: " to ", plain: true,
}

// asPlain writes with ASCII what is often said otherwise.
var asPlain = strings.NewReplacer("°", " deg ", "–", "-", "—", "-", "−", "-", "→", "->", "×", "x", "µ", "u", "½", "1/2", "¼", "1/4", "¾", "3/4", "…", "...", "²", "2", "³", "3", "\u00a0", " ")

// said is a text as the terminal can show it: safe, and of a plain one nothing but ASCII.
func (s *signs) said(text string) string {
	text = words.Safe(text)
	if !s.plain {
		return text
	}
	return strings.Map(func(r rune) rune {
		if r < ' ' || r > '~' {
			return '?'
		}
		return r
	}, strings.ReplaceAll(asPlain.Replace(text), "  ", " "))
}

// clip cuts a text to so many columns; what is cut off is marked.
func (s *signs) clip(text string, columns int) string {
	if uniseg.StringWidth(text) <= columns {
		return text
	}
	more := "…"
	if s.plain {
		more = "."
	}
	var b strings.Builder
	for g, left := uniseg.NewGraphemes(text), columns-1; g.Next(); {
		if left -= g.Width(); left < 0 {
			break
		}
		b.WriteString(g.Str())
	}
	return strings.TrimRight(b.String(), " ") + more
}

// Attributes of the terminal: those every one has.
const (
	bold  = "1"
	faint = "2"
)

// inks are the colours of the roles, in their order: of the sixteen that every terminal has those that can be
// read on a dark screen and on a light one; the last is that of text.
var inks = [...]string{"36", "35", "32", "31", "33", ""}

// inkOf is the colour of a role.
func inkOf(r chart.Role) string {
	if r < 0 {
		return faint
	}
	return inks[int(r)%len(inks)]
}

// paint puts an attribute around a text, where there is one and the terminal takes it.
func (o Options) paint(attribute, text string) string {
	if !o.Colour || attribute == "" || strings.TrimSpace(text) == "" {
		return text
	}
	return "\x1b[" + attribute + "m" + text + "\x1b[0m"
}
