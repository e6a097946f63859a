package main

import (
	"errors"
	"fmt"

	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/recall"
	"maltwright/cmd/words"
	"maltwright/cmd/write/text"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
)

// record is a batch as it was read, with what it was read from.
type record struct {
	in    input
	root  read.Reader
	house *model.House
	batch *model.Batch
	found []finding.Finding       // in its file and those it uses
	files map[*source.File]string // absolute path of each; see located
}

// unsound tells whether something outside of the records is a fault, so that there is
// nothing sound to forecast.
func (r record) unsound() bool {
	return !ledger.Sound(r.house, r.batch, r.found)
}

// records is what is to be told of the files beside their batches.
type records struct {
	faults []finding.Finding // that keep a batch from being used as it should be
	unread []string          // batches that cannot be used at all
	houses []*model.House    // of all files that were read
	pinned []*model.Batch    // those that say by which text of their process they were begun
}

// recordsOf reads the batches of the files, and has each taken that reads and whose
// process is known, while its root is open. Faults count in a file with a batch, and
// in one in which no process reads that could have come between its records; whoever
// asks for records does not ask for drafts.
func recordsOf(files []input, take func(record)) (records, error) {
	var all records
	seen, known := map[string]bool{}, recall.Known{}
	for _, in := range files {
		if in.path != "" && seen[in.path] { // a file in a folder that is given too
			continue
		}
		seen[in.path] = true
		root, err := read.OpenRoot(in.root)
		if err != nil {
			return all, failed("%s: %s", in.root, plainError(err))
		}
		house, found := read.Load(in.name, in.text, in.dir, in.past(root, known))
		all.houses = append(all.houses, house)
		if len(house.Batches) > 0 || len(house.Processes) == 0 {
			all.faults = append(all.faults, atLeast(found, finding.Fault)...)
		}
		for _, b := range house.Batches {
			if b.Broken || b.Process == nil {
				all.unread = append(all.unread, fmt.Sprintf("batch %q of %s", b.Name, in.name))
				continue
			}
			if b.Pinned != nil {
				all.pinned = append(all.pinned, b)
			}
			take(record{in: in, root: root, house: house, batch: b, found: found})
		}
		root.Close()
	}
	return all, nil
}

// tell says what does not read. Where no batch is left it gives an error; what was to
// be done with them, such as "to show", stands in it.
func (all records) tell(w *World, left int, paths []string, what string) error {
	if len(all.faults) > 0 {
		_ = text.Findings(w.Err, finding.Sort(all.faults), text.Options{Width: w.Width, Colour: w.colour() && w.ErrTerm, Folder: w.Folder})
	}
	for _, name := range all.unread {
		w.aside(fmt.Sprintf("left out: %s, which must be put right first", words.Safe(name)))
	}
	for _, b := range all.pinned {
		w.tellPin(b)
	}
	switch {
	case left > 0:
		return nil
	case len(all.faults) > 0:
		return failure{ExitFindings, errors.New("no batch " + what + ": put these right first")}
	}
	return failure{ExitFindings, fmt.Errorf("%s: no record of a batch", joined(paths))}
}

// below gives the path of a file below the root from which it was read, or "" where it has none.
func below(in input, r read.Reader, f *source.File) string { return in.as().Below(r, f) }
