package main

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"maltwright/cmd/answer/progress"
	"maltwright/cmd/journal"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/work"
)

// free asks before a batch is begun in a vessel that holds another one by its record.
func (c Begin) free(w *World, in input, p *model.Process, at time.Time) error {
	if len(p.Stages) == 0 || c.Sure || c.DryRun {
		return nil
	}
	holder := model.HolderOf(p.Stages[0])
	if holder == nil {
		return nil
	}
	other := w.lyingIn(in, holder.Name, at)
	if other == nil {
		return nil
	}
	said := fmt.Sprintf("batch %q, begun %s, is still in %q by its record %s", other.name, other.began.Format("Mon 2 Jan 15:04"), holder.Name, filepath.Base(other.in.name))
	if !w.InTerm || !w.ErrTerm {
		return usage("not begun: %s; --sure begins another one all the same", said)
	}
	question := "begin another one? y or n:"
	fmt.Fprintf(w.Err, "%s ", strings.Join(words.Wrap(words.Safe(said+"; "+question), max(w.Width, 40)), "\n"))
	if answer, _ := bufio.NewReader(w.In).ReadString('\n'); !strings.HasPrefix(strings.ToLower(strings.TrimSpace(answer)), "y") {
		return failure{ExitFindings, fmt.Errorf("not begun")}
	}
	return nil
}

// lying is a batch that lies in a vessel, by its record.
type lying struct {
	running
	began time.Time
}

// lyingIn seeks a batch under way beside a file that lies in a vessel at a time; nil where none does.
func (w World) lyingIn(in input, vessel string, at time.Time) *lying {
	folder := filepath.Dir(in.path)
	list, err := os.ReadDir(folder)
	if err != nil {
		return nil
	}
	for _, e := range list {
		if !e.Type().IsRegular() || !strings.HasSuffix(e.Name(), extension) {
			continue
		}
		record, err := World{}.file(filepath.Join(folder, e.Name()), in.root)
		if err != nil || len(journal.Batches(record.name, record.text)) == 0 {
			continue
		}
		house, _, err := record.load()
		if err != nil {
			continue
		}
		for _, b := range house.Batches {
			if !b.Broken && b.Process != nil && goesOn(b, at) && w.liesIn(b, vessel, at) {
				return &lying{running{record, b.Name}, b.Began.Time}
			}
		}
	}
	return nil
}

// liesIn tells whether a batch lies in a vessel at a time: by its first stage, as its record has it.
func (w World) liesIn(b *model.Batch, vessel string, at time.Time) bool {
	if len(b.Process.Stages) == 0 || b.Began.After(at) {
		return false
	}
	holder := model.HolderOf(b.Process.Stages[0])
	if holder == nil || holder.Name != vessel {
		return false
	}
	ctx, release := w.interruptible()
	defer release()
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
