package lsp

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"sync"
	"time"

	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/cmd/shelf"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/follow"
	"maltwright/sim/work"
)

// subject is a process or a batch that is drawn, with its forecast.
type subject struct {
	file     string             // its name
	words    words.House        // of its process
	forecast *forecast.Forecast // of a process
	follow   *follow.Following  // of a batch
	at       time.Time          // as of when it is followed
	asOf     progress.AsOf      // and why

	mu    sync.Mutex
	drawn *curve.Curve // nil until it was asked for
}

// recent is the subject that was drawn last: an editor asks for the same in several sizes. It is of what was
// checked, which is another as soon as a text is, and of a time.
type recent struct {
	mu      sync.Mutex
	checked *desk.Checked
	name    string
	when    time.Time
	of      *subject
}

// lately is how long a batch that is under way is told as of the same time.
const lately = time.Minute

func (r *recent) get(checked *desk.Checked, name string, now time.Time) *subject {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.of == nil || r.checked != checked || r.name != name || now.Sub(r.when).Abs() >= lately {
		return nil
	}
	return r.of
}

func (r *recent) keep(checked *desk.Checked, name string, now time.Time, of *subject) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.checked, r.name, r.when, r.of = checked, name, now, of
}

// subject forecasts the process or the batch of a document that has the name, or the first one. A file with
// faults is not forecast.
func (s *session) subject(ctx context.Context, v *desk.View, doc *desk.Doc, name string) (*subject, error) {
	checked, err := v.Checked(doc.Path)
	if err != nil {
		return nil, err
	}
	if worst, any := finding.Worst(checked.Findings); any && worst >= finding.Fault {
		return nil, refused(fmt.Errorf("%s has faults: put them right first", filepath.Base(doc.Path)))
	}
	now := s.now()
	if d := s.recent.get(checked, name, now); d != nil {
		return d, nil
	}
	d, err := s.forecast(ctx, checked, name, filepath.Base(doc.Path), now)
	if err == nil {
		s.recent.keep(checked, name, now, d)
	}
	return d, err
}

func (s *session) forecast(ctx context.Context, checked *desk.Checked, name, file string, now time.Time) (d *subject, err error) {
	d = &subject{file: file}
	for _, p := range checked.House.Processes {
		if name == "" || p.Name == name {
			d.words = words.Of(p)
			d.forecast, err = forecast.Run(p, forecast.Options{Meter: work.NewMeter(ctx, nil)})
			return d, d.broke(err)
		}
	}
	for _, b := range checked.House.Batches {
		if b.Process != nil && (name == "" || b.Name == name) {
			err = s.follow(ctx, d, b, now)
			return d, d.broke(err)
		}
	}
	return nil, refused(fmt.Errorf("%s holds no process and no record that can be drawn", d.file))
}

// follow follows a batch, as the command follow does.
func (s *session) follow(ctx context.Context, d *subject, b *model.Batch, now time.Time) (err error) {
	d.words = words.OfBatch(b.Process, b)
	d.at, d.asOf = progress.When(b, now)
	o := follow.Options{}
	if s.options.Cache != "" {
		o.Shelf = shelf.In(s.options.Cache, shelf.Program())
	}
	d.follow, err = follow.Of(ctx, b, d.at, o)
	return err
}

// broke puts into words why there is no forecast.
func (d *subject) broke(err error) error {
	var said *wire.Error
	if err == nil || errors.As(err, &said) {
		return err
	}
	return refused(fmt.Errorf("%s: %s", d.file, d.words.Cause(err)))
}
