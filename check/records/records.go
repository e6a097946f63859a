// Package records judges the record of a batch beside its process: what cannot be,
// and what is rather a slip of the pen.
//
// # How it works
//
// The words come first: whether the lines are in the order of the work, whether one is
// written twice, whether the hours and dates between two steps are those of the process.
// What is in doubt there is set aside. Then the readings are held beside a forecast that
// keeps to the record, and to each other, linearised (evidence.Linearise): which costs a
// forecast for each thing that is open, and no sampling. Only where a reading is far off
// is the record fitted in full before it is told.
//
// A slip is told once, at the reading.
package records

import (
	"cmp"
	"context"
	"fmt"
	"time"

	"maltwright/check/profile"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/work"
)

// Rules lists the rules of a record.
func Rules() []finding.Rule {
	return []finding.Rule{readingImpossible, readingDoubtful, recordOutOfOrder, writtenTwice, timeDoubtful, pieceUnturned, changeDoubtful, sampleDoubtful, maltNotWeighed, processChanged, contaminantHigh, remarkAlarms}
}

// record is a batch under judgement.
type record struct {
	batch *model.Batch // with the sample and the changes that make sense
	usual profile.Profile
	plan  *forecast.Forecast // as the process has it, with what was changed; nil where there is none
	steps []planned          // of the plan, in order
	aside map[int]bool       // readings, by their place, of which a slip is told already
	found []finding.Finding
	bound bound
}

// bound is what ends the forecasts of a record.
type bound struct {
	ctx  context.Context
	pool *work.Pool
}

// Judge judges a batch that reads in full. Its forecasts spend from a pool; without one
// only the words are looked at, and no more of it is where the pool does not suffice.
func Judge(ctx context.Context, b *model.Batch, pool *work.Pool) []finding.Finding {
	if b.Broken || b.Process == nil || b.Process.Broken {
		return nil
	}
	sound := *b
	r := &record{batch: &sound, usual: profile.Of(b.Process), aside: map[int]bool{}, bound: bound{ctx, pool}}
	sound.Sample, sound.Changes = r.sample(), r.changes()
	r.pinned()
	r.contaminants()
	r.alarms()
	r.cannot()
	r.twice()
	r.scales()
	if pool != nil && pool.Err() == nil && !b.Began.IsZero() {
		r.planned()
	}
	r.unweighed()
	r.charged()
	r.order()
	r.unturned()
	if r.plan != nil && !r.days() {
		r.doubts()
	}
	return r.found
}

func (r *record) note(f finding.Finding) { r.found = append(r.found, f) }

// slip tells of a reading, once.
func (r *record) slip(i int, f finding.Finding) {
	if !r.aside[i] {
		r.aside[i] = true
		if f.Rule == recordOutOfOrder.Name && f.Hint == recordOutOfOrder.Do && i < len(r.batch.Readings) {
			f.Hint = cmp.Or(r.inOrderAt(i), f.Hint)
		}
		r.note(f)
	}
}

// planned is a step of the plan as a record names it.
type planned struct {
	kind       string
	number     int
	stage      model.StageKind
	nth        int // which stage of its kind
	start, end float64
	step       model.Step  // nil for a stage that is one step
	whole      model.Stage // the stage it is of
}

// planned forecasts the batch as it was meant, with what was changed.
func (r *record) planned() {
	t, err := evidence.New(r.batch, time.Time{})
	if err != nil {
		return
	}
	t.Bound(r.bound.ctx, r.bound.pool)
	plan, err := forecast.Run(t.Process, forecast.Options{Begun: r.batch.Began.Time, Course: &forecast.Course{Changes: r.batch.Changes}, Meter: t.Meter()})
	if err != nil || plan.BrokenOff() {
		return
	}
	r.plan = plan
	for _, st := range plan.Stages {
		for _, s := range st.Steps {
			kind := string(s.Kind)
			if kind == "" {
				kind = string(st.Kind)
			}
			r.steps = append(r.steps, planned{kind, s.Nth, st.Kind, st.Number, s.Start, s.End, stepAt(r.batch.Process, s.Place), st.Of})
		}
	}
}

func stepAt(p *model.Process, at source.Place) (found model.Step) {
	var seek func([]model.Step)
	seek = func(list []model.Step) {
		for _, s := range list {
			if s.Place() == at {
				found = s
			}
			seek(model.Inner(s))
		}
	}
	for _, st := range p.Stages {
		seek(model.StepsOf(st))
	}
	return found
}

// at finds a step of the plan by the name that a record gives it; of a stage it is the
// last. It is -1 where the plan has none, or the name may mean several.
func (r *record) at(name *model.StepName) int {
	last := -1
	for i, s := range r.steps {
		switch {
		case string(s.stage) == name.Kind.Text && name.Number > 0 && name.Number != s.nth:
		case string(s.stage) == name.Kind.Text && name.Number == 0 && last >= 0 && r.steps[last].nth != s.nth:
			return -1
		case string(s.stage) == name.Kind.Text:
			last = i
		case s.kind != name.Kind.Text:
		case name.Number == s.number:
			return i
		case name.Number == 0 && last >= 0:
			return -1
		case name.Number == 0:
			last = i
		}
	}
	return last
}

// since is a time of the record in seconds from the first soak.
func (r *record) since(at model.Instant) float64 { return at.Sub(r.batch.Began.Time).Seconds() }

// what names a reading by its words: soak 2, germinate.
func stepWords(name *model.StepName) string {
	if name.Number == 0 {
		return name.Kind.Text
	}
	return fmt.Sprintf("%s %d", name.Kind.Text, name.Number)
}
