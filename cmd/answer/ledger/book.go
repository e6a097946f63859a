package ledger

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"maltwright/check"
	"maltwright/cmd/answer"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/seasons"
	"maltwright/sim/work"
)

// Record is a batch as it was read, with what it was read from.
type Record struct {
	File   string      // its name as it was given
	Root   string      // the folder out of which nothing is read
	Below  string      // the path below it of the file of the process; "" where that came from nowhere else
	Reader read.Reader // of the root
	House  *model.House
	Batch  *model.Batch
	Found  []finding.Finding // in its file and those it uses
}

// Book takes records one after another.
type Book struct {
	ctx       context.Context
	allowance func() *work.Pool
	pool      *work.Pool
	file      string // of the last record
	processes map[string]standing
	checked   map[string]check.Report // of files, but for the records in them
	entries   []entry
}

type entry struct {
	batch *model.Batch
	told  Batch
}

// New gives a book without entries. What the forecasts of the batches of one file may
// spend is told by allowance for each file, nil for work.Seasons; past it batches are
// shown by their words alone.
func New(ctx context.Context, allowance func() *work.Pool) *Book {
	if allowance == nil {
		allowance = func() *work.Pool { return work.NewPool(work.Seasons) }
	}
	return &Book{ctx: ctx, allowance: allowance, processes: map[string]standing{}, checked: map[string]check.Report{}}
}

// Enter takes a record. The batches of one file come one after another. Once the context
// is over it does nothing.
func (b *Book) Enter(r Record) {
	if b.ctx.Err() != nil {
		return
	}
	if b.pool == nil || r.File != b.file {
		b.pool, b.file = b.allowance(), r.File
	}
	b.entries = append(b.entries, entry{r.Batch, b.batch(r)})
}

// Result gives the batches.
func (b *Book) Result() Result {
	list := slices.Clone(b.entries)
	sorted.Stable(list, func(a, b entry) int { return seasons.ByBeginning(a.batch, b.batch) })
	var r Result
	for _, e := range list {
		r.Batches = append(r.Batches, e.told)
	}
	return r
}

func (b *Book) batch(r Record) Batch {
	p := b.process(r)
	f, pool := p.forecast, b.pool
	if f != nil {
		went, err := evidence.MostLikely(b.ctx, r.Batch, pool)
		f, p.costly = cmp.Or(went, f), errors.Is(err, work.ErrPool)
	}
	if p.costly {
		f, pool = nil, nil
	}
	s := seasons.Of(r.Batch, f)
	out := Batch{File: source.Text(r.File), Batch: r.Batch.Name, Process: r.Batch.Process.Name, Began: r.Batch.Began.Time, Lot: lotOf(r.Batch), Lots: lotsOf(r.Batch), Charge: charge(r.Batch.Process), Pinned: answer.PinOf(r.Batch),
		Complete: f != nil && !f.BrokenOff(), NotForecast: p.obstacle(), Figures: figures(&s), Analyses: analysesOf(r.Batch), Remarks: remarksOf(r.Batch), Rub: s.Rub,
		StepsChanged: len(r.Batch.Changes), ProcessFaults: p.faults, ProcessCautions: p.cautions, Written: r.Batch.Process, Course: seasons.Course(r.Batch, f)}
	for _, f := range append(check.Record(b.ctx, r.House, r.Batch, r.Found, pool), r.Found...) {
		if f.Severity > finding.Note && f.Place.Within(r.Batch.Scope) {
			out.RecordFindings++
		}
	}
	for _, c := range r.Batch.Changes {
		out.Changes = append(out.Changes, change(c))
	}
	for _, d := range s.Doubts {
		what := AtCast
		if d.Clean {
			what = CleanMalt
		}
		out.Doubtful = append(out.Doubtful, Doubt{what, answer.Kilograms(d.Weight), answer.Kilograms(d.Dry)})
	}
	return out
}

func charge(p *model.Process) answer.Kilograms {
	if p.Charge == nil {
		return answer.Kilograms(math.NaN())
	}
	return answer.Kilograms(p.Charge.SI)
}

func change(c model.Change) Change {
	label := c.Step.Kind.Text
	if c.Step.Number > 0 {
		label = fmt.Sprintf("%s %d", label, c.Step.Number)
	}
	return Change{label, c.Step.Kind.Text, c.Step.Number, c.Said(), c.Because}
}
