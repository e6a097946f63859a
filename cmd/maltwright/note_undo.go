package main

import (
	"fmt"
	"strings"

	"maltwright/cmd/words"
)

// undo takes back what was noted last: as it is remembered, or else the last line of the record.
func (c Note) undo(w *World, in input) error {
	u, err := w.clerk(in).Undo(c.record(in), "", c.DryRun)
	if err != nil {
		return exitOf(err)
	}
	for _, x := range u.Gone {
		w.say("%s: taken back: %s", u.Batch, x.Words)
	}
	for _, x := range u.Again {
		w.say("%s: as it was: %s", u.Batch, x.Words)
	}
	w.say("put it in again with:")
	for i, x := range u.Gone {
		fix := ""
		if len(u.Again) == len(u.Gone) {
			fix = fmt.Sprintf("--fix %d ", u.Again[i].Number)
		}
		fmt.Fprintf(w.Out, "  maltwright note %s %s%s\n", words.Safe(quotedForShell(in.name)), fix, words.Safe(quotedForShell(x.Words)))
	}
	return nil
}

// list shows the lines of the record with their numbers.
func (c Note) list(w *World, in input) error {
	batch, lines, err := w.clerk(in).Lines(c.record(in))
	if err != nil {
		return exitOf(err)
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
