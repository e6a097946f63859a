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
	"maltwright/lang/finding"
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
	b := d.reported(ctx, u, s, now)
	b.Ledger = u.entered(ctx, root, b.Batch)
	if ctx.Err() != nil {
		return report.Report{}, ctx.Err()
	}
	page := b.Page()
	return report.New(page.Title, page), nil
}

// reported is what the report of a batch is made of, without what its record comes to.
func (d *Folder) reported(ctx context.Context, u *unit, s *standing, now time.Time) report.Batch {
	followed, why := progress.When(s.batch, now)
	at := followed
	for _, x := range s.batch.Lines() { // analyses come when it is over
		if x.When().After(at) {
			at = x.When().Time
		}
	}
	b := s.batch.Until(at)
	out := report.Batch{House: s.house(), Batch: b, At: at, LeftOut: len(s.batch.Lines()) - len(b.Lines()), Ledger: ledger.Batch{File: source.Text(u.Name)}}
	for _, f := range append(check.Record(ctx, u.house, b, u.found, nil), u.found...) {
		if f.Severity > finding.Note && f.Place.Within(b.Scope) {
			out.Found = append(out.Found, f)
		}
	}
	if !s.sound() {
		out.Why = "There is no forecast: the process must be put right first."
		return out
	}
	f := d.following(s)
	if f == nil {
		var err error
		if f, err = follow.Of(ctx, s.batch, followed, follow.Options{}); err != nil {
			out.Why = "There is no forecast of this batch."
			return out
		}
	}
	r := progress.Of(f, followed, why)
	out.Progress, out.Course = &r, outlook.Of(f.Middle(), b.Began.Time)
	if line, err := curve.Batch(ctx, f, curve.Options{}); err == nil {
		for _, x := range figures.All(&line, out.House) {
			out.Charts = append(out.Charts, x)
		}
	}
	return out
}
