package main

import (
	"errors"
	"fmt"
	"time"

	"maltwright/cmd/journal"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/read"
)

// Note appends one reading to the record of a batch.
type Note struct {
	File    string   `arg:"" name:"file" help:"The file with the batch."`
	Reading []string `arg:"" help:"The reading, as a line of the batch: weighed 7.48 kg."`
	At      string   `placeholder:"TIME" help:"When it was read, as 14:00 or \"2026-03-06 14:00\"; otherwise now. A time alone follows the line above."`
	Batch   string   `placeholder:"NAME" help:"Which batch, where the file holds several."`
	DryRun  bool     `help:"Check the reading and print its line; write nothing."`
	Root    string   `placeholder:"FOLDER" help:"Folder that use may read; otherwise that of the file."`
}

// Help is the longer help of the command.
func (Note) Help() string {
	return `The reading is checked first, also beside the process and the rest of the record: one
that does not read, or cannot be, is told in a line, and the file stays as it is. One
that is doubtful is written, and told. Nothing else in the file is touched. Who notes
while another command writes the file waits for it, up to half a minute, and at
every moment the old or the new file is there, whole.

Examples:

  maltwright note batch.malt weighed 7.48 kg after soak 1
  maltwright note batch.malt weighed 8.47 kg in "blue tub" after soak 1
  maltwright note batch.malt counted chit 84 of 100
  maltwright note batch.malt counted acrospire 2 6 22 55 13 2 --at 08:00
  maltwright note batch.malt felt rub chalky
  maltwright note batch.malt read bed 17.2 °C --at "2026-03-10 21:00"
  maltwright note batch.malt turned
  maltwright note batch.malt weighed 4.92 kg clean malt --dry-run
  maltwright note batch.malt changed soak 3 to 5 h because "left for work"

Exit code: 0 written; 1 the reading or the file does not read, or cannot be; 2 the
command line cannot be understood, or the file holds no such batch; 3 the file
cannot be read or written.`
}

// Run checks the reading and writes it. Now is asked again under the lock, so that of
// two who wait for each other the later line has the later time.
func (c Note) Run(w *World) error {
	in, err := w.file(c.File, c.Root)
	if err != nil {
		return err
	}
	doubts, err := c.judged(w, in) // before a lock is put beside the file, for it takes a while
	if err != nil {
		return err
	}
	said := ""
	note := func(text []byte) ([]byte, error) {
		e, err := c.entry(in, text)
		if err != nil {
			return nil, err
		}
		said = fmt.Sprintf("%s: %s", words.Safe(e.Batch), words.Safe(words.OneLine(e.Words())))
		return e.Text, nil
	}
	if c.DryRun {
		_, err = note(in.text)
	} else {
		err = w.edit(c.File, in.path, note)
	}
	if err != nil {
		return err
	}
	fmt.Fprintln(w.Out, said)
	c.tellDoubts(w, doubts)
	return nil
}

// entry gives the text of the file with the line in it.
func (c Note) entry(in input, text []byte) (journal.Entry, error) {
	root, err := read.OpenRoot(in.root)
	if err != nil {
		return journal.Entry{}, failed("%s: %s", in.root, plainError(err))
	}
	defer root.Close()
	record := journal.Record{Name: in.name, Text: text, Reader: in.past(root, nil), Dir: in.dir, Batch: c.Batch}
	e, err := record.With(journal.Reading{Words: c.Reading, At: c.At}, time.Now())
	return e, notNoted(err)
}

// judged holds the new line beside the process and the rest of the record. It refuses
// what cannot be, and gives what is doubtful.
func (c Note) judged(w *World, in input) ([]finding.Finding, error) {
	e, err := c.entry(in, in.text)
	if err != nil {
		return nil, err
	}
	ctx, release := w.interruptible()
	defer release()
	doubts, err := e.Judge(ctx)
	if ctx.Err() != nil {
		return nil, errInterrupted
	}
	return doubts, notNoted(err)
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

// tellDoubts warns of what is doubtful, a line each, and says whether it was written.
func (c Note) tellDoubts(w *World, doubts []finding.Finding) {
	done := "noted, but look"
	if c.DryRun {
		done = "look"
	}
	for _, f := range doubts {
		fmt.Fprintf(w.Err, "maltwright: %s again: %s; %s [%s]\n", done, words.Safe(f.Message), words.Safe(f.Hint), f.Rule)
	}
}
