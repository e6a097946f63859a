package main

import (
	"fmt"
	"os"
	"strings"

	"maltwright/cmd/folder"
	"maltwright/cmd/journal"
	"maltwright/cmd/words"
	"maltwright/lang/read"
)

// Note writes readings into the record of a batch, and says what they come to.
type Note struct {
	File   string   `arg:"" optional:"" help:"The file with the batch, or the name of that; it may be left out where one batch is under way here."` // or the first word of the reading
	Words  []string `arg:"" optional:"" name:"reading" help:"The reading, as a line of the batch: weighed 7.48 kg."`
	At     string   `placeholder:"TIME" help:"When it was read, as 14:00, \"fri 18:00\", \"2 h ago\" or \"2026-03-06 14:00\"; otherwise now."`
	Batch  string   `placeholder:"NAME" help:"Which batch, where there are several."`
	Sure   bool     `help:"Write it though it is doubtful."`
	Undo   bool     `help:"Take the last line back."`
	Fix    int      `placeholder:"LINE" help:"Put the line of this number right: the reading takes its place."`
	List   bool     `help:"Show the lines of the batch with their numbers."`
	DryRun bool     `help:"Check the reading and print its line; write nothing."`
	Root   string   `placeholder:"FOLDER" help:"Folder that use may read; otherwise that of the file."`
}

// Help is the longer help of the command.
func (Note) Help() string {
	return `Writes the reading and answers what it comes to beside the forecast, and what is
next and when. Without a file it is the one batch under way in this folder. The word
in front may be left out: 7.48 kg, 17 °C, chit 84 of 100, chalky.

A reading is checked first, also beside the process and the rest of the record: one
that does not read, or is impossible, gets an answer in one line, and the file stays
as it is. One that is doubtful is asked about; without a terminal it is refused, and
--sure writes it. A reading of before the last line goes to its place in time.
Nothing else in the file is touched. Without a reading, lines of readings are taken
from standard input: all of them are written, or none; --at is the time of those
that say none. If another command is writing the file, note waits for it, up to half
a minute; at every moment the old or the new file is there, whole. For --undo the
text from before is kept in your cache folder; without it the last line of the
record is taken back.

Examples:

  maltwright note weighed 7.48 kg after soak 1
  maltwright note 12.2 lb
  maltwright note 26-03.malt weighed 8.47 kg in "blue tub" after soak 1
  maltwright note counted acrospire 2 6 22 55 13 2 --at 08:00
  maltwright note bed 17.2 °C --at "yesterday 21:00"
  maltwright note remark smells of cucumber
  maltwright note changed soak 3 to 5 h because "left for work"
  maltwright note --undo
  maltwright note --list
  maltwright note --fix 12 weighed 7.84 kg after soak 1
  maltwright note 26-03.malt < readings.txt

Exit code: 0 written; 1 the reading or the file does not read, cannot be, or is
doubtful; 2 the command line cannot be understood, or there is no such batch; 3 the
file cannot be read or written.`
}

// Run finds the batch and does what is asked.
func (c Note) Run(w *World) error {
	in, reading, err := c.find(w)
	if err != nil {
		return err
	}
	switch {
	case c.Undo && (c.Fix != 0 || c.List || len(reading) > 0 || c.At != ""), c.List && (c.Fix != 0 || len(reading) > 0 || c.At != ""):
		return usage("--undo and --list take no reading")
	case c.Fix != 0 && len(reading) == 0:
		return usage("--fix %d: say what is right, as a reading behind it", c.Fix)
	case c.Undo:
		return c.undo(w, in)
	case c.List:
		return c.list(w, in)
	}
	lines := ""
	if len(reading) == 0 {
		if lines, err = w.piped(); err != nil {
			return err
		}
		if strings.TrimSpace(lines) == "" {
			return usage("there is no reading; write one, such as: maltwright note %s weighed 7.48 kg", quotedForShell(in.name))
		}
	}
	return c.note(w, in, folder.Reading{Words: reading, Text: lines, At: c.At, Fix: c.Fix})
}

// piped is what stands on standard input, where that is no terminal.
func (w World) piped() (string, error) {
	if w.In == nil || w.InTerm {
		return "", nil
	}
	text, err := read.ReadAll(w.In)
	if err != nil {
		return "", failed("cannot read standard input: %v", err)
	}
	return strings.ReplaceAll(string(text), "\r\n", "\n"), nil
}

// find parts the file from the reading. What comes first is a file where it ends like one, where
// it lies here and begins no reading, or where it is the name of a batch whose file does.
func (c *Note) find(w *World) (in input, reading []string, err error) {
	if name, is := w.recordNamed(c.File); is {
		in, err = w.file(name, c.Root)
		return in, c.Words, err
	}
	if c.File != "" {
		reading = append([]string{c.File}, c.Words...)
	}
	on, err := w.underway("note", c.Batch, c.Root, w.now())
	c.Batch = on.name
	return on.in, reading, err
}

// recordNamed gives the file that a word of the command line names.
func (w World) recordNamed(word string) (name string, is bool) {
	if strings.HasSuffix(word, extension) {
		return word, true
	}
	if word == "" {
		return "", false
	}
	if journal.Begins(word) || strings.ContainsAny(word, " \t") {
		return "", false
	}
	for _, name := range []string{word, word + extension} {
		if info, err := os.Stat(w.at(name)); err == nil && info.Mode().IsRegular() {
			return name, true
		}
	}
	return word, strings.ContainsAny(word, `/\`) && !strings.ContainsAny(word[:1], "0123456789") // it is told that there is none
}

// record is the batch that is noted in.
func (c Note) record(in input) folder.Record { return folder.Record{File: in.as(), Batch: c.Batch} }

// note judges a reading, asks about it where it is doubtful, and writes it.
func (c Note) note(w *World, in input, x folder.Reading) error {
	ctx, release := w.interruptible()
	defer release()
	clerk, record := w.clerk(in), c.record(in)
	a, err := clerk.Judge(ctx, record, x)
	if ctx.Err() != nil {
		return errInterrupted
	}
	switch {
	case err != nil:
		return exitOf(err)
	case c.DryRun:
		c.tell(w, a)
		return nil
	}
	instead := false
	if a.Asks() && !c.Sure {
		if instead, err = w.ask(a); err != nil {
			return err
		}
		a.Doubts = nil // they were told
	}
	if instead {
		a, err = clerk.Instead(ctx, record, a)
	} else {
		a, err = clerk.Write(record, x, a)
	}
	if err != nil {
		return exitOf(err)
	}
	c.tell(w, a)
	return nil
}

// tell shows what was noted and what it comes to, and warns of what is doubtful.
func (c Note) tell(w *World, a folder.Answer) {
	for _, line := range a.Lines {
		if a.Was != "" {
			w.say("%s: was %s", a.Batch, a.Was)
		}
		w.say("%s: %s", a.Batch, line)
	}
	if a.Says != "" {
		w.say("%s", a.Says)
	}
	done := "noted, but look"
	if c.DryRun {
		done = "look"
	}
	for _, d := range a.Doubts {
		if d.Danger { // that is no doubt, and the answer itself
			w.say("%s: %s; %s", d.Severity, d.Message, d.Hint)
			continue
		}
		w.aside(fmt.Sprintf("%s again: %s [%s]", done, words.Safe(d.Says()), d.Rule))
	}
}

// say writes a line, wrapped to the terminal where there is one.
func (w World) say(format string, args ...any) {
	text := words.Safe(fmt.Sprintf(format, args...))
	if w.Width == 0 {
		fmt.Fprintln(w.Out, text)
		return
	}
	for _, line := range words.Wrap(text, w.Width) {
		fmt.Fprintln(w.Out, line)
	}
}
