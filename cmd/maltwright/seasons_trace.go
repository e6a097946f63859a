package main

import (
	"slices"
	"strconv"
	"strings"

	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/answer/trace"
	"maltwright/cmd/words"
	"maltwright/cmd/write/csv"
	"maltwright/cmd/write/json"
	"maltwright/cmd/write/text"
)

// trace tells what became of a lot.
func (c Seasons) trace(w *World, read records, of ledger.Result) error {
	if traceWriters[c.Format] == nil {
		return usage("--trace is written as text, json or csv; what became of the batches says --format %s without it", c.Format)
	}
	r, ok := trace.Of(c.Trace, read.houses, of)
	if !ok {
		return usage("no lot of these files is called %q, and no delivery; they hold %s", c.Trace, read.lots())
	}
	if err := read.tell(w, 1, c.Paths, ""); err != nil { // a lot without batches is told too
		return err
	}
	tellCostly(w, of)
	if err := traceWriters[c.Format](w, r); err != nil {
		return failed("cannot write: %v", err)
	}
	if len(read.faults) > 0 || r.Overdrawn {
		return errFindings
	}
	return nil
}

// lots names the lots of all files.
func (all records) lots() string {
	var names []string
	for _, h := range all.houses {
		for _, g := range h.Grains {
			if name := strconv.Quote(g.Name); !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	if len(names) == 0 {
		return "none"
	}
	return strings.Join(names, ", ")
}

var traceWriters = map[string]func(*World, trace.Result) error{
	"text": func(w *World, r trace.Result) error {
		return text.Trace(w.Out, r, houseOf(r.Written), w.options())
	},
	"json": func(w *World, r trace.Result) error { return json.Write(w.Out, r, words.House{}.Say) },
	"csv": func(w *World, r trace.Result) error {
		rows := csv.New[trace.Batch](w.Out)
		for _, b := range r.Batches {
			rows.Write(b)
		}
		return rows.Close()
	},
}
