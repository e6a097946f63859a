package main

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"strings"

	"maltwright/cmd/journal"
	"maltwright/cmd/shelf"
	"maltwright/cmd/words"
	"maltwright/lang/read"
)

// undoing tells what is kept for --undo apart from what else the cache holds.
const undoing = "note --undo, 1"

// remember keeps the text of a file as it was before it was noted in, under the text after it.
func (w World) remember(in input, before, after []byte) {
	if w.Cache != "" {
		shelf.In(w.Cache, undoing).Put(undoKey(in, after), before)
	}
}

// before is the text of a file before it was last noted in; nil where that is not known, or it
// was changed since.
func (w World) before(in input, now []byte) []byte {
	if w.Cache == "" {
		return nil
	}
	return shelf.In(w.Cache, undoing).Get(undoKey(in, now))
}

func undoKey(in input, text []byte) string {
	return fmt.Sprintf("%s\n%x", in.path, sha256.Sum256(text))
}

// undo takes back what was noted last: as it is remembered, or else the last line of the record.
func (c Note) undo(w *World, in input) error {
	root, err := read.OpenRoot(in.root)
	if err != nil {
		return failed("%s: %s", in.root, plainError(err))
	}
	defer root.Close()
	var gone, again []journal.Line
	var batch string
	back := func(text []byte) ([]byte, error) {
		r := c.record(in, root, text)
		if was := w.before(in, text); was != nil {
			then := c.record(in, root, was)
			again, _ = then.Gone(text)
			if gone, batch = r.Gone(was); len(gone) > 0 {
				return was, nil
			}
		}
		out, line, name, err := r.WithoutLast()
		gone, again, batch = []journal.Line{line}, nil, name
		return out, notNoted(err)
	}
	if c.DryRun {
		_, err = back(bytes.Clone(in.text))
	} else {
		err = w.edit(in.name, in.path, back)
	}
	if err != nil {
		return err
	}
	for _, x := range gone {
		w.say("%s: taken back: %s", batch, x.Words)
	}
	for _, x := range again {
		w.say("%s: as it was: %s", batch, x.Words)
	}
	w.say("put it in again with:")
	for i, x := range gone {
		fix := ""
		if len(again) == len(gone) {
			fix = fmt.Sprintf("--fix %d ", again[i].Number)
		}
		fmt.Fprintf(w.Out, "  maltwright note %s %s%s\n", words.Safe(quotedForShell(in.name)), fix, words.Safe(quotedForShell(x.Words)))
	}
	return nil
}

// list shows the lines of the record with their numbers.
func (c Note) list(w *World, in input) error {
	root, err := read.OpenRoot(in.root)
	if err != nil {
		return failed("%s: %s", in.root, plainError(err))
	}
	defer root.Close()
	batch, lines, err := c.record(in, root, in.text).Lines()
	if err != nil {
		return notNoted(err)
	}
	w.say("batch %s, %s:", batch, in.name)
	for _, x := range lines {
		w.listed(fmt.Sprintf("%5d  ", x.Number), words.Safe(x.Words))
	}
	return nil
}

// listed writes a line of a list behind its head, folded beside it on a terminal.
func (w World) listed(head, text string) {
	lines := []string{text}
	if w.Width > 0 {
		lines = words.Wrap(text, w.Width-len(head))
	}
	for _, line := range lines {
		fmt.Fprintln(w.Out, head+line)
		head = strings.Repeat(" ", len(head))
	}
}
