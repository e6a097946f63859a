package talk

import (
	"runtime"
	"strings"

	"maltwright/cmd/words"
)

// A question looks plain: in the terminal's own colours, bold and faint and reversed, so that it
// can be read on a dark ground and on a light one, and without colours too.
const (
	lookBold     = "\x1b[1m"
	lookFaint    = "\x1b[2m"
	lookReversed = "\x1b[7m"
	lookRed      = "\x1b[31m"
	lookNone     = "\x1b[0m"
)

func bold(text string) string     { return lookBold + text + lookNone }
func faint(text string) string    { return lookFaint + text + lookNone }
func reversed(text string) string { return lookReversed + text + lookNone }
func red(text string) string      { return lookRed + text + lookNone }

// What is taken out of a line before it is shown.
var (
	coloured   = strings.NewReplacer()
	colourless = strings.NewReplacer(lookRed, "")
	plain      = strings.NewReplacer(lookBold, "", lookFaint, "", lookReversed, "", lookRed, "", lookNone, "")
)

// looksOf is what a terminal does not show: nothing at all where none is named, and no colour where
// NO_COLOR is set (no-color.org).
func looksOf(env func(string) string) *strings.Replacer {
	kind := env("TERM")
	switch {
	case kind == "dumb", kind == "" && runtime.GOOS != "windows":
		return plain
	case env("NO_COLOR") != "":
		return colourless
	}
	return coloured
}

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
