package main

import (
	"context"
	"fmt"
	"time"

	"maltwright/check"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/sim/work"
)

// judged holds the new line beside the process and the rest of the record. It refuses
// what cannot be, and gives what is doubtful.
func (c Note) judged(w *World) (doubts []finding.Finding, err error) {
	line, err := c.line(time.Now())
	if err != nil {
		return nil, err
	}
	in, err := w.file(c.File, c.Root)
	if err != nil {
		return nil, err
	}
	n, err := c.appended(in, line)
	if err != nil {
		return nil, err
	}
	ctx, release := w.interruptible()
	defer release()
	list := n.said(ctx)
	if ctx.Err() != nil {
		return nil, errInterrupted
	}
	for _, f := range list {
		if f.Severity >= finding.Fault {
			f.Hint += fmt.Sprintf("; if it is so all the same, first note: accept %s because, and why", f.Rule)
			return nil, refused(f)
		}
		doubts = append(doubts, f)
	}
	return doubts, nil
}

// said lists what there is to say of the new line.
func (n noted) said(ctx context.Context) (list []finding.Finding) {
	here := func(start int, f *source.File) bool {
		return f == n.house.Files[0] && n.at.Start <= start && start <= n.at.End
	}
	for _, b := range n.house.Batches {
		if b.Name != n.batch || b.Scope.File != n.house.Files[0] || n.at.Start < b.Scope.Start || b.Scope.End < n.at.End {
			continue
		}
		for _, f := range check.Record(ctx, n.house, b, n.found, work.NewPool(work.Records)) {
			if f.Severity > finding.Note && here(f.Place.Start, f.Place.File) {
				list = append(list, f)
			}
		}
	}
	return list
}

// tellDoubts warns of what was written and is doubtful, a line each.
func tellDoubts(w *World, doubts []finding.Finding) {
	for _, f := range doubts {
		fmt.Fprintf(w.Err, "maltwright: noted, but look again: %s; %s [%s]\n", words.Safe(f.Message), words.Safe(f.Hint), f.Rule)
	}
}
