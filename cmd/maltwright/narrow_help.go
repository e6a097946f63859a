package main

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"

	"github.com/alecthomas/kong"

	"maltwright/cmd/words"
)

// The help of the library stands in two columns and needs 80. On a narrower terminal it is folded:
// what a flag or a command is for stands below its name.

// leastHelp is how wide a terminal is at the least that shows help in two columns.
const leastHelp = 72

// helpOn writes help for a terminal so wide.
func helpOn(width int) kong.HelpPrinter {
	return func(options kong.HelpOptions, ctx *kong.Context) error {
		if ctx.Selected() == nil { // the first lines have scrolled away by then
			out := ctx.Stdout
			defer func() {
				fmt.Fprintf(out, "\n%s\n", strings.Join(words.Wrap("Begin with maltwright new: it asks about your house and writes it.", width), "\n"))
			}()
		}
		if width >= leastHelp {
			return kong.DefaultHelpPrinter(options, ctx)
		}
		out := ctx.Stdout
		var wide bytes.Buffer
		ctx.Stdout = &wide
		options.WrapUpperBound = 80
		err := kong.DefaultHelpPrinter(options, ctx)
		ctx.Stdout = out
		if err == nil {
			_, err = out.Write([]byte(strings.Join(foldedHelp(wide.String(), width), "\n") + "\n"))
		}
		return err
	}
}

// helpEntry is a name and, behind a gap, what it is for.
var helpEntry = regexp.MustCompile(`^( {0,6})(\S(?:.*?\S)?) {2,}(\S.*)$`)

// helpMore is a further line of what something is for.
var helpMore = regexp.MustCompile(`^ {10,}(\S.*)$`)

// foldedHelp folds help that was written for 80 columns.
func foldedHelp(text string, width int) (out []string) {
	name, about, prose := "", "", ""
	flush := func() {
		if name != "" {
			out = append(out, folded(name, "  ", width)...)
			out = append(out, folded("    "+about, "    ", width)...)
		}
		if prose != "" {
			out = append(out, words.Wrap(prose, width)...)
		}
		name, about, prose = "", "", ""
	}
	for _, line := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		entry, more := helpEntry.FindStringSubmatch(line), helpMore.FindStringSubmatch(line)
		switch {
		case more != nil && name != "":
			about += " " + more[1]
		case entry != nil:
			flush()
			name, about = entry[1]+entry[2], entry[3]
		case line == "" || line[0] == ' ' || strings.HasSuffix(line, ":"):
			flush()
			out = append(out, folded(line, "      ", width)...)
		default:
			prose = words.Joined(" ", prose, line)
		}
	}
	flush()
	return out
}

// folded breaks a line behind its own margin, its further lines behind another.
func folded(line, hang string, width int) []string {
	text := strings.TrimLeft(line, " ")
	margin := line[:len(line)-len(text)]
	lines := words.Wrap(text, width-max(len(margin), len(hang)))
	for i := range lines {
		if i == 0 {
			lines[i] = margin + lines[i]
		} else {
			lines[i] = hang + lines[i]
		}
	}
	return lines
}
