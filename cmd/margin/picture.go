package margin

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"maltwright/check"
	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/noted"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/chart/figures"
	"maltwright/cmd/chart/svg"
	"maltwright/cmd/sheet"
	"maltwright/cmd/sheet/onpaper"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
	"maltwright/sim/work"
)

// Drawn is what is drawn or printed of a file: a process with its forecast, or a batch.
type Drawn struct {
	Name     string
	batch    *model.Batch
	forecast *forecast.Forecast
}

// ErrNothing says that a file holds neither a process nor a batch of a name.
var ErrNothing = errors.New("there is no process and no batch to draw")

// DrawnOf finds the process or the batch of a name in the main file of a report; of no name it is the first
// batch, or else the first process. The error is ErrNothing, or says why it cannot be drawn.
func DrawnOf(r check.Report, name string) (Drawn, error) {
	for _, b := range r.House.Batches {
		if name != "" && b.Name != name {
			continue
		}
		if !sound(b, r.House, r.Findings) {
			return Drawn{}, fmt.Errorf("%q cannot be drawn: its record or its process must be put right first", b.Name)
		}
		return Drawn{Name: b.Name, batch: b}, nil
	}
	for i, p := range r.House.Processes {
		if p.Scope.File == nil || p.Scope.File.Name() != r.House.Files[0].Name() || name != "" && p.Name != name {
			continue
		}
		f := nth(r.Forecasts, i)
		if f == nil {
			return Drawn{}, fmt.Errorf("%q cannot be drawn: %s", p.Name, max(unforecast(r, p), "it is not forecast"))
		}
		return Drawn{Name: p.Name, forecast: f}, nil
	}
	return Drawn{}, ErrNothing
}

// Chart writes the moisture over time as an SVG, as chart --format svg does. The error is that of the writer, of
// the context, or says why there is none.
func (d Drawn) Chart(ctx context.Context, w io.Writer, now time.Time) error {
	var c curve.Curve
	var h words.House
	var err error
	if d.batch != nil {
		at, _ := progress.When(d.batch, now)
		h = words.OfBatch(d.batch.Process, d.batch)
		c, err = curve.Likely(ctx, d.batch, at, curve.Options{})
	} else {
		h = words.Of(d.forecast.Process)
		c, err = curve.Forecast(ctx, d.forecast, curve.Options{})
	}
	if err != nil {
		return errors.New(h.Cause(err))
	}
	list, _ := figures.Named(figures.OfMoisture, &c, h)
	if len(list) == 0 {
		return ErrNothing
	}
	return svg.Write(w, list[0], svg.Options{})
}

// Sheet writes the sheet by the bucket as a PDF, as the command sheet does: of a batch the visits to come. File is
// the name of the file, for the lines that are to be typed. Errors as of Chart.
func (d Drawn) Sheet(ctx context.Context, w io.Writer, file string, now time.Time) error {
	s, err := d.sheet(ctx, file, now)
	if err != nil {
		return err
	}
	_, err = onpaper.Write(w, s)
	return err
}

func (d Drawn) sheet(ctx context.Context, file string, now time.Time) (sheet.Sheet, error) {
	if d.batch == nil {
		return sheet.Of(d.forecast, sheet.Options{Begin: "maltwright begin " + typed(file)})
	}
	at, as := progress.When(d.batch, now)
	s, ok := noted.Stand(ctx, d.batch, at, work.NewPool(work.Records))
	if !ok {
		return sheet.Sheet{}, fmt.Errorf("%q cannot be forecast; maltwright follow says why", d.batch.Name)
	}
	elapsed := at.Add(-time.Minute).Sub(d.batch.Began.Time).Seconds() // what is due in this minute is to come
	due := slices.DeleteFunc(visits.Gather(visits.List(s.Plan)), func(v visits.Visit) bool { return v.At <= elapsed })
	if len(due) == 0 {
		return sheet.Sheet{}, fmt.Errorf("%q is over: no visit is to come", d.batch.Name)
	}
	return sheet.OfBatch(d.batch, s.Plan, due, at, sheet.Options{Note: "maltwright note " + typed(file), Past: as == progress.LastReading})
}

// typed is the name of a file as a command line has it.
func typed(file string) string {
	if strings.ContainsAny(file, " '\"$&()") {
		return "'" + strings.ReplaceAll(file, "'", `'\''`) + "'"
	}
	return file
}
