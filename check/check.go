// Package check judges a process file: what the language finds in it, then what a
// forecast of each of its processes finds.
//
// One forecast serves all rules of a process. A process that did not read in full
// is not forecast, since what is missing would be blamed on the maltster; that it
// was not is said among what could not be judged.
package check

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"

	"maltwright/check/profile"
	"maltwright/check/records"
	"maltwright/check/rules"
	"maltwright/check/tell"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// Rules lists every rule: those of the text, of its meaning and of the forecast.
func Rules() []finding.Rule {
	list := slices.Concat(syntax.Rules(), read.Rules(), []finding.Rule{noProcess, acceptUnused, acceptUnknown, findingsLeftOut})
	for _, r := range rules.All() {
		list = append(list, r.Rule)
	}
	return append(list, records.Rules()...)
}

// Options say how to check; the zero value forecasts.
type Options struct {
	NoForecast bool   // only look at the text and its meaning
	On         string // the day of the first soak, as 2026-03-06; "" where it is not known
	Odds       bool   // forecast many likely batches, to tell how often promises are kept
	Members    int    // how many; 0 for as many as is usual

	Context context.Context // ends the forecasts, and what was found by then is given; nil where nothing does
	Pool    *work.Pool      // from which the forecasts of processes spend; nil for one of the file's own
	Records *work.Pool      // the same of those beside which records are held
}

// whole gives the options with all that may be left out.
func (o Options) whole() Options {
	if o.Context == nil {
		o.Context = context.Background()
	}
	if o.Pool == nil {
		o.Pool = work.NewPool(work.File)
	}
	if o.Records == nil {
		o.Records = work.NewPool(work.Records)
	}
	return o
}

func (o Options) meter() *work.Meter { return work.NewMeter(o.Context, o.Pool) }

// Report is what was found in one file.
type Report struct {
	House     *model.House
	Findings  []finding.Finding
	NotJudged []finding.NotJudged
	Forecasts []*forecast.Forecast // of the processes of the house, in their order: by these they were judged; nil where none was made
}

// File checks one file. The text is given; what it uses is read through r, and
// dir is the folder of the file below the root that r reads.
func File(name string, text []byte, dir string, r read.Reader, o Options) Report {
	house, found := read.Load(name, text, dir, r)
	out := Report{House: house}
	o = o.whole()
	if empty(house) && len(found) == 0 {
		found = append(found, nothing(house.Files[0]))
	}
	ofRecords, unjudged := record(house, found, o)
	found = append(found, ofRecords...)
	if unjudged != "" {
		out.NotJudged = append(out.NotJudged, finding.NotJudged{File: name, Rule: "record", Reason: unjudged})
	}
	ofText := slices.Clone(found) // what one process does wrong is no reason not to forecast the next
	for _, p := range house.Processes {
		c := judge(p, ofText, o)
		more, unjudged := c.Found, c.Unjudged
		found, out.Forecasts = append(found, more...), append(out.Forecasts, c.Forecast)
		for _, u := range unjudged {
			out.NotJudged = append(out.NotJudged, finding.NotJudged{File: name, Process: p.Name, Rule: u.Rule, Reason: u.Reason})
		}
	}
	told := accepted(house, found, idle(house, out.NotJudged, o))
	out.Findings = capped(house.Files[0], finding.Sort(withoutConsequences(house, told)))
	return out
}

// record judges the records of a file. With faults in it, or in what it uses, there is
// nothing sound to hold them beside.
func record(h *model.House, found []finding.Finding, o Options) (list []finding.Finding, unjudged string) {
	if len(h.Batches) == 0 {
		return nil, ""
	}
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		return nil, "its faults must be put right first"
	}
	pool := o.Records
	if o.NoForecast {
		pool = nil
	}
	first, left := "", 0
	for _, b := range h.Batches {
		list = append(list, records.Judge(o.Context, b, pool)...)
		if pool != nil && pool.Err() != nil {
			left++
			first = cmp.Or(first, b.Name)
		}
	}
	return list, leftOut(first, left, len(h.Batches))
}

// leftOut is why batches of a file are not held beside forecasts.
func leftOut(first string, left, all int) string {
	switch {
	case left == 0:
		return ""
	case all == 1:
		return "the forecasts of its batch take more steps of the model than the records of one file may have"
	}
	return fmt.Sprintf("the forecasts of the batches before %q took all the steps of the model that the records of one file may have; of that one and those behind it, %d of %d, only the words are looked at", first, left, all)
}

// Record gives what there is to say of a batch of a house in which so much was found in
// its words, without what an acceptance silences. Its forecasts spend from the pool.
func Record(ctx context.Context, h *model.House, b *model.Batch, found []finding.Finding, pool *work.Pool) []finding.Finding {
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		return nil
	}
	list := records.Judge(ctx, b, pool)
	return slices.DeleteFunc(list, func(f finding.Finding) bool { return silencer(h, f) >= 0 })
}

// mostFindings is how many findings of one file are told: past them nobody reads on.
const mostFindings = 200

// capped keeps the first findings, every danger and why reading ended, and says how
// many are left out.
func capped(f *source.File, found []finding.Finding) []finding.Finding {
	if len(found) <= mostFindings {
		return found
	}
	kept := slices.Clone(found[:mostFindings])
	for _, x := range found[mostFindings:] {
		if x.Severity == finding.Danger || x.Rule == "too-many-statements" {
			kept = append(kept, x)
		}
	}
	n := len(found) - len(kept)
	return append(kept, findingsLeftOut.At(source.Place{File: f, Span: f.LastLine()}, fmt.Sprintf("%d more findings are left out", n)))
}

// FaultsFirst is why a process with faults is not forecast.
const FaultsFirst = "its faults must be put right first"

// judge forecasts a process and applies the rules. With faults in the text there
// is nothing sound to forecast, and a process that did not read in full is not
// judged at all.
func judge(p *model.Process, found []finding.Finding, o Options) *rules.Case {
	c := &rules.Case{Process: p, Profile: profile.Of(p), On: o.On, Meter: o.meter}
	switch worst, any := finding.Worst(found); {
	case p.Broken:
		c.Unjudged = []rules.Unjudged{{Rule: "forecast", Reason: FaultsFirst}}
		return c
	case any && worst == finding.Fault:
		c.Unjudged = append(c.Unjudged, rules.Unjudged{Rule: "forecast", Reason: FaultsFirst})
	case o.NoForecast:
		c.Unjudged = append(c.Unjudged, rules.Unjudged{Rule: "forecast", Reason: "no forecast was asked for"})
	default:
		f, err := forecast.Run(p, forecast.Options{Meter: o.meter()})
		switch {
		case errors.Is(err, work.ErrPool):
			c.Unjudged = append(c.Unjudged, rules.Unjudged{Rule: "forecast", Reason: tooMany})
		case err != nil:
			c.Note(rules.Unable(p, err))
		}
		c.Forecast = f
		if o.Odds && f != nil && len(p.Expect) > 0 {
			c.Odds = odds(o.Context, c, o.Members)
		}
	}
	c.Judge()
	return c
}

// tooMany is why a process is not forecast that comes after others of its file.
const tooMany = "the forecasts of the processes before it took all the steps of the model that one file may have"

// odds tells how often each promise is kept in many likely batches.
func odds(ctx context.Context, c *rules.Case, members int) []ensemble.Odds {
	e, err := ensemble.Run(ctx, c.Process, ensemble.Options{Members: members})
	if err != nil {
		c.Unjudged = append(c.Unjudged, rules.Unjudged{Rule: "expectation-at-risk", Reason: "a likely batch cannot be forecast: " + tell.Cause(err, c.Process.Units())})
		return []ensemble.Odds{}
	}
	return e.Expectations()
}
