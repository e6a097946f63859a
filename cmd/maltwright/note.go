package main

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"time"

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
	return c.note(w, in, func(r journal.Record, now time.Time) (journal.Entry, error) {
		one := journal.Reading{Words: reading, At: c.At, Order: w.reader(true).Order}
		switch {
		case lines != "":
			return r.WithAll(lines, one, now)
		case c.Fix != 0:
			return r.Fix(c.Fix, one, now)
		}
		return r.With(one, now)
	})
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

// note checks what is made of the record, and writes it. Now is asked again under the lock, so
// that of two who wait for each other the later line has the later time.
func (c Note) note(w *World, in input, with func(journal.Record, time.Time) (journal.Entry, error)) error {
	made := func(text []byte) (journal.Entry, error) { return c.entry(w, in, text, with) }
	e, err := made(in.text) // before a lock is put beside it, for the judging takes a while
	if err != nil {
		return err
	}
	answer, err := c.judged(w, in, e)
	if err != nil {
		return err
	}
	if answer.instead {
		with = asOffered(answer.offer)
	}
	note := func(text []byte) ([]byte, error) {
		e, err = made(text)
		if err == nil && !c.DryRun {
			w.remember(in, text, e.Text)
		}
		return e.Text, err
	}
	if c.DryRun {
		_, err = note(in.text)
	} else {
		err = w.edit(in.name, in.path, note)
	}
	if err != nil {
		return err
	}
	if answer.instead {
		answer = c.answer(w, in, e, nil)
	}
	c.tell(w, e, answer)
	return nil
}

// entry gives the text of the file with what is noted in it.
func (c Note) entry(w *World, in input, text []byte, with func(journal.Record, time.Time) (journal.Entry, error)) (journal.Entry, error) {
	root, err := read.OpenRoot(in.root)
	if err != nil {
		return journal.Entry{}, failed("%s: %s", in.root, plainError(err))
	}
	defer root.Close()
	e, err := with(c.record(in, root, text), w.now())
	return e, notNoted(err)
}

func (c Note) record(in input, root read.Reader, text []byte) journal.Record {
	return journal.Record{Name: in.name, Text: text, Reader: in.past(root, nil), Dir: in.dir, Batch: c.Batch}
}

// notNoted gives an error of the journal its exit code.
func notNoted(err error) error {
	var misuse journal.Misuse
	var refusal journal.Refusal
	switch {
	case errors.As(err, &misuse):
		return usage("%v", err)
	case errors.As(err, &refusal):
		return failure{ExitFindings, err}
	}
	return err
}

// tell shows what was noted and what it comes to, and warns of what is doubtful.
func (c Note) tell(w *World, e journal.Entry, a noteAnswer) {
	for _, line := range e.All() {
		if e.Was != "" {
			w.say("%s: was %s", e.Batch, e.Was)
		}
		w.say("%s: %s", e.Batch, words.OneLine(line))
	}
	if a.says != "" {
		w.say("%s", a.says)
	}
	done := "noted, but look"
	if c.DryRun {
		done = "look"
	}
	for _, f := range a.doubts {
		if f.Rule == alarming { // that is no doubt, and the answer itself
			w.say("%s: %s; %s", f.Severity, f.Message, f.Hint)
			continue
		}
		w.aside(fmt.Sprintf("%s again: %s [%s]", done, words.Safe(words.Joined("; ", f.Message, f.Hint)), f.Rule))
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
