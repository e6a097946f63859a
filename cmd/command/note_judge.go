package command

import (
	"fmt"

	"maltwright/check"
	"maltwright/check/report"
	"maltwright/lang/finding"
	"maltwright/lang/process"
	"maltwright/lang/source"
)

// judged holds the new line beside the process and the rest of the record. It refuses
// what cannot be, and gives what is doubtful.
func (c Note) judged(h *process.House, found []finding.Finding, batch string, at source.Span) (doubts []finding.Finding, err error) {
	for _, b := range h.Batches {
		if b.Name != batch || b.Scope.File != h.Files[0] || at.Start < b.Scope.Start || b.Scope.End < at.End {
			continue
		}
		for _, f := range check.Record(h, b, found) {
			if f.Place.File != h.Files[0] || f.Place.Start < at.Start || at.End < f.Place.Start || f.Severity < finding.Caution {
				continue
			}
			if f.Severity >= finding.Fault {
				f.Hint += fmt.Sprintf("; if it is so all the same, first note: accept %s because, and why", f.Rule)
				return nil, refused(f)
			}
			doubts = append(doubts, f)
		}
	}
	return doubts, nil
}

// tellDoubts warns of what was written and is doubtful, a line each.
func tellDoubts(w *World, doubts []finding.Finding) {
	for _, f := range doubts {
		fmt.Fprintf(w.Err, "maltwright: noted, but look again: %s; %s [%s]\n", report.Safe(f.Message), report.Safe(f.Hint), f.Rule)
	}
}
