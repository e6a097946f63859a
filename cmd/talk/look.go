package talk

import "maltwright/cmd/words"

// A question looks plain: in the terminal's own colours, bold and faint and reversed, so that it
// can be read on a dark ground and on a light one, and without colours too: the library
// leaves out what a terminal does not have, and colours where NO_COLOR is set.
func bold(text string) string     { return "\x1b[1m" + text + "\x1b[0m" }
func faint(text string) string    { return "\x1b[2m" + text + "\x1b[0m" }
func reversed(text string) string { return "\x1b[7m" + text + "\x1b[0m" }
func red(text string) string      { return "\x1b[31m" + text + "\x1b[0m" }

// marker stands in front of the choice that Enter takes.
const marker = "* "

// wrapped is a text in lines of a width; none of an empty one.
func wrapped(text string, width int, look func(string) string) (lines []string) {
	if text == "" {
		return nil
	}
	for _, line := range words.Wrap(words.Safe(text), width) {
		lines = append(lines, look(line))
	}
	return lines
}
