package folder

import (
	"context"
	"fmt"
	"path/filepath"
	"time"

	"maltwright/cmd/answer/progress"
	"maltwright/lang/model"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/work"
)

// Lying gives the batch that is still in the vessel of a process at a time by its record, of those
// beside the file of the process; nil where none is.
func (f File) Lying(ctx context.Context, p *model.Process, at time.Time) *Found {
	vessel := vesselOf(p)
	names, err := Beside(filepath.Dir(f.Path))
	if vessel == "" || err != nil {
		return nil
	}
	for _, b := range Batches(names, func(name string) (File, error) { return Read(filepath.Join(filepath.Dir(f.Path), name), f.Root) }) {
		if LiesIn(ctx, b.Model, vessel, at) {
			return &b
		}
	}
	return nil
}

// Lies says that a batch is still in a vessel.
func (b Found) Lies() string {
	return fmt.Sprintf("batch %q, begun %s, is still in %q by its record %s", b.Model.Name, b.Model.Began.Format("Mon 2 Jan 15:04"), vesselOf(b.Model.Process), filepath.Base(b.Path))
}

// LiesIn tells whether a batch lies in a vessel at a time: by its first stage, as its record has it.
func LiesIn(ctx context.Context, b *model.Batch, vessel string, at time.Time) bool {
	if b.Broken || b.Process == nil || !GoesOn(b, at) || b.Began.After(at) || vesselOf(b.Process) != vessel {
		return false
	}
	as, _ := progress.When(b, at)
	t, err := evidence.New(b, as)
	if err != nil {
		return false
	}
	t.Bound(ctx, work.NewPool(work.Records))
	f, err := t.Run(make([]float64, len(t.Axes)), false)
	if err != nil || len(f.Stages) == 0 || len(f.Stages[0].Steps) == 0 {
		return false
	}
	steps := f.Stages[0].Steps
	return at.Sub(b.Began.Time).Seconds() < steps[len(steps)-1].End
}

// vesselOf is the name of what a batch lies in first, "" where that has none.
func vesselOf(p *model.Process) string {
	if len(p.Stages) == 0 {
		return ""
	}
	if holder := model.HolderOf(p.Stages[0]); holder != nil {
		return holder.Name
	}
	return ""
}
