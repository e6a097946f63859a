package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"

	"golang.org/x/term"

	"maltwright/cmd/rewrite"
	"maltwright/cmd/serve/guard"
	"maltwright/cmd/words"
	"maltwright/cmd/write/text"
)

// Exit codes of every command.
const (
	ExitClean    = 0 // nothing found at or above the level asked
	ExitFindings = 1 // something found
	ExitUsage    = 2 // the command line cannot be understood
	ExitFailed   = 3 // it could not be done: a file, a disk
)

// World is what a command touches: streams, the working folder, the terminal.
type World struct {
	In       io.Reader
	Out, Err io.Writer
	Folder   string // absolute path of the working folder
	Terminal bool   // Out is a terminal
	ErrTerm  bool   // Err is a terminal
	InTerm   bool   // In is a terminal
	Width    int    // columns of Out, 0 where it is no terminal
	Env      func(string) string
	Cache    string          // folder for what is kept from one run to the next; "" keeps nothing
	shown    Shown           // what of an answer is told in full
	writing  rewrite.Options // as they are for everybody, but in tests

	clock    func() time.Time                  // nil for that of this computer
	networks func() ([]guard.Interface, error) // nil for those of this computer
	browser  func(address string)              // nil for that of the person
	looking  time.Duration                     // between looks at whether a batch is under way; 0 for a minute

	Context context.Context // ends what takes long; nil where only an interrupt does
}

// Process is the world of the running program.
func Process() World {
	w := World{In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Env: os.Getenv}
	w.Folder, _ = os.Getwd() // without it file names are shown as they were given
	if cache, err := os.UserCacheDir(); err == nil {
		w.Cache = filepath.Join(cache, "maltwright")
	}
	w.Terminal, w.ErrTerm = term.IsTerminal(int(os.Stdout.Fd())), term.IsTerminal(int(os.Stderr.Fd()))
	w.InTerm = term.IsTerminal(int(os.Stdin.Fd()))
	if w.Terminal {
		w.Width, _, _ = term.GetSize(int(os.Stdout.Fd()))
	}
	return w
}

// colour tells whether Out takes colours: a terminal that is not dumb, and nobody
// said NO_COLOR (no-color.org).
func (w World) colour() bool {
	return w.Terminal && w.Env("NO_COLOR") == "" && w.Env("TERM") != "dumb"
}

// options say how to write an answer for a reader.
func (w World) options() text.Options {
	return text.Options{Width: w.Width, Colour: w.colour(), Folder: w.Folder, Assumed: w.shown.Assumed, Cautions: w.shown.Cautions}
}

// failure is an error with the exit code it leads to.
type failure struct {
	code int
	err  error
}

func (f failure) Error() string { return f.err.Error() }

func usage(format string, args ...any) error {
	return failure{ExitUsage, fmt.Errorf(format, args...)}
}

func failed(format string, args ...any) error {
	return failure{ExitFailed, fmt.Errorf(format, args...)}
}

// findings is the outcome of a command that did its work and found something.
var errFindings = failure{ExitFindings, errors.New("")}

// errInterrupted is that of a command that was ended before it was done.
var errInterrupted = failure{ExitFailed, errors.New("interrupted")}

// interruptible gives a context that an interrupt ends, and how to let go of it. What
// takes long runs under it, so that a command ends at once and says so.
func (w World) interruptible() (context.Context, func()) {
	ctx := w.Context
	if ctx == nil {
		ctx = context.Background()
	}
	return signal.NotifyContext(ctx, os.Interrupt)
}

// Main runs one command line and gives the exit code.
func Main(w World, args []string) (code int) {
	var cli Line
	parser, err := newParser(w, &cli)
	if err != nil {
		return w.report(err)
	}
	switch {
	case len(args) == 0:
		args = []string{"--help"}
	case len(args) == 1 && slices.Contains([]string{"--version", "-v", "-V"}, args[0]): // as every other program has it
		args = []string{"version"}
	}
	args = joinTimes(ordered(args))
	if err := w.noCommand(args); err != nil {
		return w.report(err)
	}
	flags := flagsOf(parser, args[0])
	args = withDashes(args, flags)
	line, err := parse(parser, signed(args))
	switch {
	case err != nil:
		return w.report(failure{ExitUsage, w.helped(err, args, flags)})
	case asksHelp(line):
		return w.report(line.PrintUsage(false))
	}
	return w.report(runs(line.Selected())(&w, parser))
}

// minus is the sign proper.
const minus = "\u2212"

// signed writes the minus of an argument such as -3 as a minus sign proper, which
// the language reads too, so that it is not taken for a flag. What stands behind -- is no
// flag, and may be the name of a file.
func signed(args []string) []string {
	out := slices.Clone(args)
	for i, a := range out {
		if a == "--" {
			break
		}
		if len(a) > 1 && a[0] == '-' && a[1] >= '0' && a[1] <= '9' {
			out[i] = minus + a[1:]
		}
	}
	return out
}

var wrongWord = regexp.MustCompile(`^(unknown flag|unexpected argument) ([^\s,]+)`)

// helped says what is wrong with a command line: with the line to type, where one is known, and
// else where to read more.
func (w World) helped(err error, args, flags []string) error {
	text := err.Error()
	if m := wrongWord.FindStringSubmatch(text); m != nil {
		what := "flag"
		if m[2][0] != '-' {
			what = "place for"
		}
		wrong := m[2]
		if line := intoFile(args, flags, wrong); line != "" {
			return fmt.Errorf("%s has no %s %s; type: %s", args[0], what, wrong, line)
		}
		meant := flagMeant(args, flags, wrong)
		if at := slices.Index(args, wrong); meant == nil && at > 1 { // the word in front went to another place: begin pale.malt at 7:00
			wrong = args[at-1]
			meant = flagMeant(args, flags, wrong)
		}
		if meant != nil {
			return fmt.Errorf("%s has no %s %s; type: %s", args[0], what, wrong, commandLine(meant...))
		}
	}
	if meant := valueMeant(args, text); meant != nil {
		return fmt.Errorf("%w; type: %s", err, commandLine(meant...))
	}
	about := "maltwright --help"
	if len(args) > 0 && isCommand(args[0]) {
		about = "maltwright " + args[0] + " --help"
	}
	if what, _, none := strings.Cut(text, `: expected string value but got "EOL"`); none {
		err = fmt.Errorf("%s needs a value behind it", what)
	} else if strings.HasPrefix(text, `expected "<file>`) || strings.HasPrefix(text, `expected "<path>`) {
		err = fmt.Errorf("%s needs a file, such as: %s", args[0], commandLine(args[0], w.sample()))
	}
	return fmt.Errorf("%w; see %s", err, about)
}

// report says what went wrong, if anything, and gives the exit code.
func (w World) report(err error) int {
	if err == nil {
		return ExitClean
	}
	code := ExitFailed
	var f failure
	if errors.As(err, &f) {
		code = f.code
	}
	if text := err.Error(); text != "" {
		w.aside(text)
	}
	return code
}

// commandLast is a line to type at the end of what is said.
var commandLast = regexp.MustCompile(`^(.*:) (maltwright [^;]+)$`)

// aside says something beside the answer. On a terminal it is folded to its width, with a command to
// type on a line of its own, and elsewhere it is one line.
func (w World) aside(text string) {
	lines := []string{"maltwright: " + words.Safe(text)}
	if w.ErrTerm && w.Width > 0 {
		said, command := lines[0], ""
		if m := commandLast.FindStringSubmatch(said); m != nil && len(said) > w.Width {
			said, command = m[1], m[2]
		}
		if lines = folded(said, "  ", w.Width); command != "" {
			lines = append(lines, "  "+command)
		}
	}
	for _, line := range lines {
		fmt.Fprintln(w.Err, line)
	}
}
