package folder

import (
	"context"
	"errors"
	"io/fs"
	"path"
	"slices"
	"time"

	"maltwright/check"
	"maltwright/cmd/answer/effect"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/answer/whatif"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/follow"
	"maltwright/sim/work"
)

// Opened is a batch or a process as it stands, for whatever draws or writes it: chart, sheet, report.
type Opened struct {
	ID       ID
	Name     string
	File     string // below the folder, with /
	House    *model.House
	Process  *model.Process
	Batch    *model.Batch // nil where it is a process
	Findings []finding.Finding
	Words    words.House
	At       time.Time          // as of when a batch is told
	AsOf     progress.AsOf      // why as of then
	Follow   *follow.Following  // by the watcher; nil where there is none, or the record is another since
	Forecast *forecast.Forecast // of a process; nil where there is none
}

// process is a process in the list.
func (u *unit) process(i int) Process {
	p := u.house.Processes[i]
	out := Process{ID: u.processes[i], Name: p.Name, File: u.at}
	if p.Charge != nil {
		out.Charge = p.Charge.String()
	}
	found := u.found
	if r := u.checking.kept(); r != nil {
		found, out.Checked = r.Findings, true
	}
	for _, f := range found {
		switch {
		case f.Severity >= finding.Fault:
			out.Faults++
		case f.Severity == finding.Caution:
			out.Cautions++
		}
	}
	return out
}

// check gives all that there is to say of the file.
func (u *unit) check(ctx context.Context) (check.Report, error) {
	return u.checking.take(ctx, nil, func(ctx context.Context) check.Report {
		root, err := u.open()
		if err != nil {
			return check.Report{House: u.house, Findings: u.found}
		}
		defer root.Close()
		return check.File(u.Name, u.Text, u.Dir, u.Past(root, nil), check.Options{Context: ctx})
	})
}

// Process opens a process with all that there is to say of it, and its forecast. Errors: *Gone, *Failed,
// and that of the context.
func (d *Folder) Process(ctx context.Context, id ID) (Opened, error) {
	p, err := d.index.find(id, false)
	if err != nil {
		return Opened{}, err
	}
	u, model := p.unit, p.unit.house.Processes[p.nth]
	r, err := u.check(ctx)
	if err != nil {
		return Opened{}, err
	}
	o := Opened{ID: id, Name: model.Name, File: u.at, House: u.house, Process: model, Findings: r.Findings, Words: words.Of(model)}
	if len(u.faults()) == 0 {
		if f, err := forecast.Run(model, forecast.Options{Meter: work.NewMeter(ctx, nil)}); err == nil {
			o.Forecast = f
		}
	}
	return o, ctx.Err()
}

// Batch opens a batch. Errors: *Gone, *Unsound, *Failed.
func (d *Folder) Batch(id ID, now time.Time) (Opened, error) {
	p, err := d.index.find(id, true)
	if err != nil {
		return Opened{}, err
	}
	u, s := p.unit, p.unit.batches[p.nth]
	o := Opened{ID: id, Name: s.batch.Name, File: u.at, House: u.house, Process: s.batch.Process, Batch: s.batch, Findings: u.found}
	if !s.sound() {
		return o, &Unsound{u.Name, u.faults()}
	}
	o.Words, o.Follow = s.house(), d.following(s)
	o.At, o.AsOf = progress.When(s.batch, now)
	return o, nil
}

// Supposed is what a process would come to with changes, beside what is written.
type Supposed struct {
	Process string
	Rows    []words.EffectRow // figures that are otherwise
	Found   []words.CameRow   // findings that come and go
	Not     []string          // why there is no comparison
}

// WhatIf says what a process would come to with lines such as "soak 1 to 6 h". Begun is when its
// first soak begins, the zero time where that is not known. Errors: *Refused, *Unsound, *Gone, *Failed, and
// that of the context.
func (d *Folder) WhatIf(ctx context.Context, id ID, begun time.Time, lines []string) (Supposed, error) {
	p, err := d.index.find(id, false)
	if err != nil {
		return Supposed{}, err
	}
	u, m := p.unit, p.unit.house.Processes[p.nth]
	if faults := u.faults(); len(faults) > 0 {
		return Supposed{}, &Unsound{u.Name, faults}
	}
	r, err := u.Suppose(ctx, m, begun, lines)
	var misuse whatif.Misuse
	var unsound whatif.Unsound
	switch {
	case ctx.Err() != nil:
		return Supposed{}, ctx.Err()
	case errors.As(err, &misuse):
		return Supposed{}, &Refused{err}
	case errors.As(err, &unsound):
		return Supposed{}, &Unsound{"the change", unsound}
	case err != nil:
		return Supposed{}, &Refused{err}
	}
	h := words.Of(m)
	return Supposed{m.Name, h.EffectRows(r.Effects[0]), words.CameRows(r.Findings), words.NotForecast(r)}, nil
}

// Suppose forecasts a process of the file as it is written and with changes. Errors: those of whatif.Ask, *Failed,
// and that of the context.
func (f File) Suppose(ctx context.Context, p *model.Process, begun time.Time, changes []string) (effect.Result, error) {
	root, err := f.open()
	if err != nil {
		return effect.Result{}, err
	}
	defer root.Close()
	return whatif.Ask(ctx, p, whatif.Case{Name: f.Name, Text: f.Text, Dir: f.Dir, Reader: root, Process: p.Name, Begun: begun, Changes: changes,
		Below: func(s *source.File) string { return f.Below(root, s) }})
}

// process gives the ID of a process by where it stands and its name; "" where it is not in the folder.
func (x *index) process(at, name string) ID {
	x.mu.Lock()
	defer x.mu.Unlock()
	u := x.units[path.Clean(at)]
	if u == nil {
		return ""
	}
	i := slices.IndexFunc(u.house.Processes, func(p *model.Process) bool { return p.Name == name })
	if i < 0 {
		return ""
	}
	return u.processes[i]
}

// texts reads the files that a unit was read from, as they were.
type texts struct{ x *index }

// Read gives the text of a file that is kept.
func (r texts) Read(at string) ([]byte, error) {
	r.x.mu.Lock()
	defer r.x.mu.Unlock()
	if s := r.x.files[path.Clean(at)]; s != nil {
		return s.text, s.err
	}
	return nil, fs.ErrNotExist
}

var _ read.Reader = texts{}
