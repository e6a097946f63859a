package serve

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/folder"
	"maltwright/cmd/journal"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/infer/follow"
)

// fake is a folder with the first batch of the examples in it, as of a time.
type fake struct {
	now    time.Time
	state  folder.State
	batch  folder.Opened
	proc   folder.Opened
	lines  []journal.Line
	answer folder.Answer
	err    error
}

const examples = "../../examples/batches"

func fakeAt(t testing.TB, at string) *fake {
	t.Helper()
	now, err := time.ParseInLocation(stamp, at, time.Local)
	require.NoError(t, err)
	f := &fake{now: now}
	root, err := read.OpenRoot(examples)
	require.NoError(t, err)
	defer root.Close()
	text, err := os.ReadFile(filepath.Join(examples, "26-05.malt"))
	require.NoError(t, err)
	house, found := read.Load("26-05.malt", text, ".", root)
	b := house.Batches[0]
	h := words.OfBatch(b.Process, b)
	fo, err := follow.Of(context.Background(), b, now, follow.Options{Members: 40})
	require.NoError(t, err)
	f.batch = folder.Opened{Name: b.Name, File: "26-05.malt", House: house, Process: b.Process, Batch: b, Findings: found, Words: h, At: now, AsOf: progress.Asked, Follow: fo}
	r := progress.Of(fo, now, progress.Asked)
	brief := folder.Brief{ID: "b1", Name: b.Name, File: "26-05.malt", Process: b.Process.Name, Began: b.Began.Time}
	on := folder.Batch{Brief: brief, Of: "p1", At: now, House: h, Now: folder.Now{Stage: r.Stage, Step: "", Moisture: "43.8 %", Weight: "9.10 kg", Gross: "9.10 kg", Ready: now.Add(96 * time.Hour), Left: "4 d"}}
	for _, v := range r.Due {
		on.Due = append(on.Due, dueFake(h, v, now, b))
	}
	on.Late = []folder.Due{{Batch: "b1", Name: b.Name, At: now.Add(-2 * time.Hour), Says: "turn", Left: "2 h", Late: true, Kind: "turn"}}
	rec := journal.Record{Name: "26-05.malt", Text: text, Reader: root, Dir: "."}
	_, f.lines, err = rec.Lines()
	require.NoError(t, err)
	f.lines = f.lines[:18]
	for _, l := range f.lines {
		on.Readings = append(on.Readings, folder.Noted{Line: l.Number, Words: l.Words, Says: "moisture 43.2 % (forecast 43.6 %)"})
	}
	on.Readings[14].Doubt = "84 kg would be 93 % moisture; 8.99 to 9.21 kg is likely; it fits as 8.4 kg, with the decimal point moved"
	f.state = folder.State{At: now, Version: "v1", Underway: []folder.Batch{on}, Due: append(append([]folder.Due{}, on.Late...), on.Due...),
		Over:      []folder.Brief{{ID: "b0", Name: "26-04", Process: "Loft pale", Began: now.Add(-30 * 24 * time.Hour), Last: now.Add(-20 * 24 * time.Hour)}},
		Processes: []folder.Process{{ID: "p1", Name: "Loft pale", File: "pale.malt", Charge: "6 kg", Cautions: 1, Lasts: "8 d 8 h"}, {ID: "p2", Name: "Loft wheat", File: "wheat.malt", Charge: "5 kg", Faults: 2}},
		Unread:    []folder.Unread{{File: "old.malt", Says: "line 3: soak has no time"}}}
	ptext, err := os.ReadFile(filepath.Join(examples, "pale.malt"))
	require.NoError(t, err)
	rep := check.File("pale.malt", ptext, ".", root, check.Options{})
	f.proc = folder.Opened{Name: "Loft pale", File: "pale.malt", House: rep.House, Process: rep.House.Processes[0], Findings: rep.Findings, Words: words.Of(rep.House.Processes[0])}
	return f
}

func dueFake(h words.House, v timetable.Visit, now time.Time, b *model.Batch) folder.Due {
	var says string
	for _, k := range v.Tasks {
		says = words.Joined("; ", says, h.Say(k.Words))
	}
	return folder.Due{Batch: "b1", Name: b.Name, At: v.Time, Says: says, Expected: words.Expected(h, v.Weight, v.OnScale), Left: words.Lasting(v.Time.Sub(now).Seconds()), Kind: string(v.Tasks[0].Kind)}
}

var _ = outlook.Of

func (f *fake) Look(context.Context, time.Time) (folder.State, error) { return f.state, nil }
func (f *fake) Batch(_ context.Context, id folder.ID, _ time.Time) (folder.Opened, error) {
	return f.batch, nil
}
func (f *fake) Process(_ context.Context, id folder.ID) (folder.Opened, error) { return f.proc, nil }
func (f *fake) Judge(context.Context, folder.ID, folder.Reading) (folder.Answer, error) {
	return f.answer, f.err
}
func (f *fake) Note(context.Context, folder.ID, folder.Reading, bool) (folder.Answer, error) {
	return f.answer, f.err
}
func (f *fake) Undo(context.Context, folder.ID) (folder.Undone, error) { return folder.Undone{}, f.err }
func (f *fake) Lines(folder.ID) ([]journal.Line, error)                { return f.lines, nil }
func (f *fake) Begin(context.Context, folder.ID, folder.Start) (folder.Begun, error) {
	return folder.Begun{}, f.err
}
func (f *fake) WhatIf(context.Context, folder.ID, time.Time, []string) (folder.Supposed, error) {
	return folder.Supposed{}, f.err
}
