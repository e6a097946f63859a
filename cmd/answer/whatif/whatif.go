// Package whatif answers what a process would come to if something were otherwise, without
// a change of its file.
//
// # How it works
//
// A change is a line as a record has it of a step that was done otherwise, soak 1 to 6 h,
// or of the charge, from 5 kg of "Far field 2026"; a fact of the house, site air to
// 41 °F; or a statement of a stage, germinate turn to every 6 h. Lines are put into a record of a batch that never was (record.go), which is read
// and judged as every other. Facts are written into a copy of the text in which they stand
// (fact.go, spelt.go), which is read and judged in place of it. Nothing is written to the disk. Both
// sides are then forecast and compared as two seasons are (cmd/answer/effect).
package whatif

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"maltwright/check"
	"maltwright/cmd/answer/effect"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/work"
)

// Case is a process file, and what is supposed to be otherwise.
type Case struct {
	Name    string // of the file, as findings show it
	Text    []byte
	Dir     string // of the file below the root of the reader
	Reader  read.Reader
	Below   func(*source.File) string // the path of a file of the house below that root
	Process string                    // which; "" where the file holds one
	Changes []string
	Begun   time.Time // when the first soak begins; the zero time where that is not known
}

// Misuse is a change that says nothing that can be changed, in words for who wrote it.
type Misuse string

func (m Misuse) Error() string { return string(m) }

// Unsound is a change with which the text does not read, or that cannot be.
type Unsound []finding.Finding

func (u Unsound) Error() string { return "what is supposed does not read" }

// errNoForecast is of a side that cannot be forecast.
var errNoForecast = errors.New("it cannot be forecast")

// Ask forecasts the process as it is written and as it is supposed to be. An interrupt
// leaves the answer unfinished. Errors: Misuse, Unsound.
func Ask(ctx context.Context, p *model.Process, c Case) (effect.Result, error) {
	var facts, lines []string
	list := usedBy(p)
	for _, change := range c.Changes {
		if change = spelt(change, list); isFact(change) || isInStage(change) {
			facts = append(facts, change)
		} else {
			lines = append(lines, change)
		}
	}
	lines, err := asLines(lines)
	if err != nil {
		return effect.Result{}, err
	}
	altered, err := c.withFacts(p, facts)
	if err != nil {
		return effect.Result{}, err
	}
	if _, found := read.Load(c.Name, altered.main(), c.Dir, altered); len(faults(found, anywhere)) > 0 {
		return effect.Result{}, Unsound(faults(found, anywhere))
	}
	o := check.Options{Context: ctx}
	was, is := check.File(c.Name, c.Text, c.Dir, c.Reader, o), check.File(c.Name, altered.main(), c.Dir, altered, o)
	batch, err := c.record(ctx, p, altered, lines)
	if err != nil {
		return effect.Result{}, err
	}
	old := run(ctx, p, forecast.Options{Begun: c.Begun})
	new := run(ctx, batch.process, forecast.Options{Begun: c.Begun, Course: &forecast.Course{Changes: batch.changes}})
	r := effect.OfForecasts(p.Name, old, new)
	r.Old, r.New, r.Written = "as written", strings.Join(c.Changes, "; "), p
	r.Findings = effect.Findings(was.Findings, append(is.Findings, batch.found...))
	return r, nil
}

// run forecasts, or gives nil where that cannot be.
func run(ctx context.Context, p *model.Process, o forecast.Options) *forecast.Forecast {
	o.Meter = work.NewMeter(ctx, nil)
	f, err := forecast.Run(p, o)
	if err != nil || f.BrokenOff() {
		return nil
	}
	return f
}

// supposed is a process as it is supposed to be.
type supposed struct {
	process *model.Process
	changes []model.Change
	found   []finding.Finding
}

// record reads the lines of a batch that never was.
func (c Case) record(ctx context.Context, p *model.Process, house *altered, lines []string) (supposed, error) {
	began := c.Begun
	if began.IsZero() {
		began = time.Now() // what has come in by now is there
	}
	text := fmt.Sprintf("use %q\nbatch \"supposed\" of \"%s\" {\nbegan %s\n%s\n}\n", house.base(), p.Name, began.Format("2006-01-02 15:04"), strings.Join(lines, "\n"))
	r := check.File(shownAs, []byte(text), c.Dir, house, check.Options{Context: ctx})
	if list := faults(r.Findings, unread); len(list) > 0 {
		return supposed{}, Unsound(list)
	}
	for _, b := range r.House.Batches {
		t, err := evidence.New(b, time.Time{})
		if err != nil || b.Broken {
			continue
		}
		return supposed{t.Process, b.Changes, ownOf(r.Findings)}, nil
	}
	return supposed{}, fmt.Errorf("%q: %w", p.Name, errNoForecast)
}

// shownAs is what findings call the lines of changes.
const shownAs = "--change"

func ofLines(f finding.Finding) bool { return f.Place.Known() && f.Place.File.Name() == shownAs }

// unread leaves out what a change does to the grain: that is told beside its forecast.
func unread(f finding.Finding) bool { return ofLines(f) && f.Rule != "change-doubtful" }

func anywhere(finding.Finding) bool { return true }

// faults gives those of the findings that keep a text from being read.
func faults(found []finding.Finding, among func(finding.Finding) bool) (list []finding.Finding) {
	for _, f := range found {
		if f.Severity >= finding.Fault && among(f) {
			list = append(list, f)
		}
	}
	return list
}

// ownOf gives what is said of the lines themselves.
func ownOf(found []finding.Finding) (list []finding.Finding) {
	for _, f := range found {
		if f.Severity > finding.Note && ofLines(f) {
			list = append(list, f)
		}
	}
	return list
}
