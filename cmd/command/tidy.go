package command

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"github.com/rogpeppe/go-internal/diff"

	"maltwright/check/report"
	"maltwright/cmd/rewrite"
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
	tree, found := syntax.Parse(source.New(in.name, in.text))
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		_ = report.Lines(w.Err, found, report.Options{Folder: w.Folder})
		fmt.Fprintf(w.Err, "maltwright: %s does not read, and is left as it is\n", report.Safe(in.name))
		return 1, nil
	}
	out := layout.Write(tree)
	same := string(out) == string(in.text)
	switch {
	case c.Verify && !same:
		fmt.Fprintln(w.Out, report.Safe(in.name))
		return 1, nil
	case c.Show && !same:
		fmt.Fprint(w.Out, w.painted(safeLines(string(diff.Diff(in.name, in.text, in.name+" tidy", out)))))
	case c.Verify, c.Show:
	case in.path == "":
		if _, err := w.Out.Write(out); err != nil {
			return 0, failed("cannot write: %v", err)
		}
	case !same:
		if err := rewrite.File(in.path, in.text, out); err != nil {
			return 0, failed("%s: %s", in.name, rewriteError(err))
		}
		fmt.Fprintf(w.Out, "laid out %s\n", report.Safe(in.name))
	}
	return 0, nil
}

func rewriteError(err error) string {
	switch {
	case errors.Is(err, rewrite.ErrLink) || errors.Is(err, rewrite.ErrChanged):
		return err.Error()
	case errors.Is(err, fs.ErrPermission):
		return "nothing may be written there"
	}
	return plainError(err)
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
		lines[i] = report.Safe(strings.ReplaceAll(lines[i], "\t", "    "))
	}
	return strings.Join(lines, "\n")
}
