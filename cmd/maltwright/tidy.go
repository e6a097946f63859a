package main

import (
	"fmt"
	"strings"

	"github.com/rogpeppe/go-internal/diff"

	"maltwright/cmd/rewrite"
	"maltwright/cmd/words"
	"maltwright/cmd/write/text"
	"maltwright/lang/finding"
	"maltwright/lang/layout"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// Tidy lays files out in the one canonical form.
type Tidy struct {
	Paths  []string `arg:"" name:"path" help:"Files or folders; - lays standard input out on standard output."`
	Show   bool     `help:"Only show what would change, as a unified diff." xor:"how"`
	Verify bool     `help:"Only tell which files are not tidy; exit code 1 if there are any." xor:"how"`
}

// Help is the longer help of the command.
func (Tidy) Help() string {
	return `There is one layout and no options. Comments keep their place, and nothing of
what the process says is changed. A file that does not read is left alone.

Examples:

  maltwright tidy pale.malt
  maltwright tidy --show examples
  maltwright tidy --verify examples
  maltwright tidy - < pale.malt

Exit code: 0 done, or all tidy; 1 a file is not tidy (--verify) or does not read;
2 the command line cannot be understood; 3 a file cannot be read or written.`
}

// Run lays out, shows or verifies.
func (c Tidy) Run(w *World) error {
	files, err := w.gather(c.Paths, "")
	if err != nil {
		return err
	}
	untidy := 0
	for _, f := range files {
		more, err := c.one(w, f)
		if err != nil {
			return err
		}
		untidy += more
	}
	if untidy > 0 {
		return errFindings
	}
	return nil
}

// one lays one file out and gives how many reasons there are for an exit code of 1.
func (c Tidy) one(w *World, in input) (int, error) {
	out, reads := laidOut(w, in)
	if !reads {
		return 1, nil
	}
	same := string(out) == string(in.text)
	switch {
	case c.Verify && !same:
		fmt.Fprintln(w.Out, words.Safe(in.name))
		return 1, nil
	case c.Show && !same:
		fmt.Fprint(w.Out, w.painted(safeLines(string(diff.Diff(in.name, in.text, in.name+" tidy", out)))))
	case c.Verify, c.Show:
	case in.path == "":
		if _, err := w.Out.Write(out); err != nil {
			return 0, failed("cannot write: %v", err)
		}
	case same:
		rewrite.Sweep(in.path)
	default:
		return inPlace(w, in)
	}
	return 0, nil
}

// inPlace lays out what stands in the file by the time it is written.
func inPlace(w *World, in input) (int, error) {
	unread, changed := 0, false
	err := w.edit(in.name, in.path, func(old []byte) ([]byte, error) {
		in.text = old
		out, reads := laidOut(w, in)
		if unread, changed = 0, false; !reads {
			unread = 1
			return old, nil
		}
		changed = string(out) != string(old)
		return out, nil
	})
	if err == nil && changed {
		fmt.Fprintf(w.Out, "laid out %s\n", words.Safe(in.name))
	}
	return unread, err
}

// laidOut gives the text in the canonical form; where it does not read, or would not
// any more, it says so.
func laidOut(w *World, in input) (out []byte, reads bool) {
	tree, found := syntax.Parse(source.New(in.name, in.text))
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		_ = text.Lines(w.Err, found, text.Options{Folder: w.Folder})
		w.aside(fmt.Sprintf("%s does not read, and is left as it is", words.Safe(in.name)))
		return nil, false
	}
	if out = layout.Write(tree); len(out) > source.MaxBytes {
		w.aside(fmt.Sprintf("%s would be too large to read if it were laid out, and is left as it is", words.Safe(in.name)))
		return nil, false
	}
	return out, true
}

// diffCodes are the terminal attributes of the lines of a diff, by how they begin;
// the sign in front says the same without colour.
var diffCodes = map[byte]string{'+': "32", '-': "31", '@': "2"}

// painted colours a diff where the terminal takes it.
func (w World) painted(text string) string {
	if !w.colour() {
		return text
	}
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if line != "" && diffCodes[line[0]] != "" {
			lines[i] = "\x1b[" + diffCodes[line[0]] + "m" + line + "\x1b[0m"
		}
	}
	return strings.Join(lines, "\n")
}

// safeLines makes a text of several lines safe for the terminal.
func safeLines(text string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = words.Safe(strings.ReplaceAll(lines[i], "\t", "    "))
	}
	return strings.Join(lines, "\n")
}
