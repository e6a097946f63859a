package talk

import (
	"charm.land/bubbles/v2/textinput"
	"charm.land/lipgloss/v2"

	"maltwright/cmd/words"
)

// A question looks plain: in the terminal's own colours, bold and faint and reversed, so that it
// can be read on a dark ground and on a light one, and without colours too.
var (
	plain    = lipgloss.NewStyle()
	bold     = plain.Bold(true)
	faint    = plain.Faint(true)
	reversed = plain.Reverse(true)
	red      = plain.Foreground(lipgloss.Red)
)

// marker stands in front of the choice that Enter takes.
const marker = "* "

// typed is how a line looks that is typed.
func typed() textinput.Styles {
	s := textinput.DefaultStyles(true)
	s.Focused = textinput.StyleState{Text: plain, Placeholder: faint, Suggestion: faint, Prompt: plain}
	s.Blurred = s.Focused
	s.Cursor.Color, s.Cursor.Blink = nil, false
	return s
}

// wrapped is a text in lines of a width; none of an empty one.
func wrapped(text string, width int, style lipgloss.Style) (lines []string) {
	if text == "" {
		return nil
	}
	for _, line := range words.Wrap(words.Safe(text), width) {
		lines = append(lines, style.Render(line))
	}
	return lines
}
