package folder

import (
	"context"
	"time"

	"maltwright/check"
	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/chart/figures"
	"maltwright/cmd/report"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/infer/follow"
)

// Report is the report of a batch, as of now or of the last line of its record. It costs what following the
// batch costs, where that was not done yet. Errors: *Gone, *Failed, and that of the context.
func (d *Folder) Report(ctx context.Context, id ID, now time.Time) (report.Report, error) {
	p, err := d.index.find(id, true)
	if err != nil {
		return report.Report{}, err
	}
	u, s := p.unit, p.unit.batches[p.nth]
	if s.batch.Process == nil {
		return report.Report{}, &Unsound{u.Name, u.faults()}
	}
	root, err := u.open()
	if err != nil {
		return report.Report{}, err
	}
	defer root.Close()
	b := Reporting{File: u.Name, House: u.house, Batch: s.batch, Found: u.found, Sound: s.sound(), Now: now, Follow: func(at time.Time) (*follow.Following, error) {
		if f := d.following(s); f != nil {
			return f, nil
		}
		return follow.Of(ctx, s.batch, at, follow.Options{})
	}}.Of(ctx)
	b.Ledger = u.entered(ctx, root, b.Batch)
	if ctx.Err() != nil {
		return report.Report{}, ctx.Err()
	}
	page := b.Page()
	return report.New(page.Title, page), nil
}

// Reporting is a batch that a report is to be made of.
type Reporting struct {
	File    string // of its record, as it is told
	House   *model.House
	Batch   *model.Batch
	Found   []finding.Finding // of the files
	Sound   bool              // it can be forecast
	At, Now time.Time         // as of At; the zero time is Now of a batch under way, and else the last line of its record
	Members int               // of the bands in its charts; 0 is as many as is usual
	Follow  func(at time.Time) (*follow.Following, error)
}

// Of gives what the report tells of the batch, without what its record comes to. Where there is no forecast it says why.
func (r Reporting) Of(ctx context.Context) report.Batch {
	at, followed, why := r.At, r.At, progress.Asked
	if at.IsZero() {
		followed, why = progress.When(r.Batch, r.Now)
		at = followed
		for _, x := range r.Batch.Lines() { // analyses come when it is over
			if x.When().After(at) {
				at = x.When().Time
			}
		}
	}
	b := r.Batch.Until(at)
	out := report.Batch{House: words.OfBatch(b.Process, b), Batch: b, At: at, LeftOut: len(r.Batch.Lines()) - len(b.Lines()), Ledger: ledger.Batch{File: source.Text(r.File)}}
	for _, f := range append(check.Record(ctx, r.House, b, r.Found, nil), r.Found...) {
		if f.Severity > finding.Note && f.Place.Within(b.Scope) {
			out.Found = append(out.Found, f)
		}
	}
	if !r.Sound {
		out.Why = "There is no forecast: the process must be put right first."
		return out
	}
	f, err := r.Follow(followed)
	if err != nil {
		out.Why = "There is no forecast: " + words.Safe(err.Error())
		return out
	}
	p := progress.Of(f, followed, why)
	out.Progress, out.Course = &p, outlook.Of(f.Middle(), b.Began.Time)
	out.Conditions, out.MaltWeighed = progress.ConditionsOf(f), progress.MaltWeighedOf(f)
	if line, err := curve.Batch(ctx, f, curve.Options{Members: r.Members}); err == nil {
		for _, x := range figures.All(&line, out.House) {
			out.Charts = append(out.Charts, x)
		}
	}
	return out
}
