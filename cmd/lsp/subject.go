package lsp

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"time"

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
	d := &subject{file: filepath.Base(doc.Path)}
	for _, p := range checked.House.Processes {
		if name == "" || p.Name == name {
			d.words = words.Of(p)
			d.forecast, err = forecast.Run(p, forecast.Options{Meter: work.NewMeter(ctx, nil)})
			return d, d.broke(err)
		}
	}
	for _, b := range checked.House.Batches {
		if b.Process != nil && (name == "" || b.Name == name) {
			err = s.follow(ctx, d, b)
			return d, d.broke(err)
		}
	}
	return nil, refused(fmt.Errorf("%s holds no process and no record that can be drawn", d.file))
}

// follow follows a batch, as the command follow does.
func (s *session) follow(ctx context.Context, d *subject, b *model.Batch) (err error) {
	d.words = words.OfBatch(b.Process, b)
	d.at, d.asOf = progress.When(b, s.now())
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
