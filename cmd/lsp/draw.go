package lsp

import (
	"bytes"
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"strings"

	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/progress"
	layout "maltwright/cmd/chart"
	"maltwright/cmd/chart/figures"
	"maltwright/cmd/chart/svg"
	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/cmd/sheet"
	"maltwright/cmd/sheet/onpaper"
	"maltwright/cmd/words"
	"maltwright/sim/infer/follow"
)

// chart draws a process or a batch over time, as the command chart does: one picture.
func chart(ctx context.Context, d *subject, o wire.DrawOptions) ([]byte, error) {
	c, err := d.curve(ctx)
	if err != nil {
		return nil, d.broke(err)
	}
	of := cmp.Or(o.Of, figures.OfMoisture)
	list, known := figures.Named(of, &c, d.words)
	switch {
	case !known:
		return nil, refused(fmt.Errorf("a chart is not made of %q: say one of %s", of, strings.Join(figures.Names(), ", ")))
	case len(list) == 0:
		return nil, refused(fmt.Errorf("there is nothing to draw of %s in it", of))
	}
	var b bytes.Buffer
	err = svg.Write(&b, list[0], svg.Options{Options: layout.Options{Width: float64(o.Wide)}})
	return b.Bytes(), err
}

// curve is the subject over time, made once.
func (d *subject) curve(ctx context.Context) (c curve.Curve, err error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	switch {
	case d.drawn != nil:
		return *d.drawn, nil
	case d.follow != nil:
		c, err = curve.Batch(ctx, d.follow, curve.Options{Members: follow.DefaultMembers}) // as many as the command
	default:
		c, err = curve.Forecast(ctx, d.forecast, curve.Options{})
	}
	if err == nil {
		d.drawn = &c
	}
	return c, err
}

// paper is the sheet by the bucket, as the command sheet makes it: of a process with the clock left open, of
// a batch with what is yet to come.
func paper(_ context.Context, d *subject, _ wire.DrawOptions) ([]byte, error) {
	x, err := d.sheet()
	if err != nil {
		return nil, d.broke(err)
	}
	var b bytes.Buffer
	_, err = onpaper.Write(&b, x) // letters that the fonts lack are told on the paper itself
	return b.Bytes(), err
}

func (d *subject) sheet() (sheet.Sheet, error) {
	name := words.TypedName(d.file)
	if f := d.follow; f != nil {
		if f.Over() {
			return sheet.Sheet{}, refused(fmt.Errorf("batch %q is over; nothing is left to do", f.Trial.Batch.Name))
		}
		o := sheet.Options{Note: "maltwright note " + name, Follow: f, Past: d.asOf == progress.LastReading}
		return sheet.OfBatch(f.Trial.Batch, f.Middle(), f.Due, d.at, o)
	}
	return sheet.Of(d.forecast, sheet.Options{Begin: "maltwright begin " + name})
}

// drawnAs is a command that makes a file of a process or a batch, and answers the address of it. Its first
// argument is the address of the document, its second are wire.DrawOptions.
func drawnAs(ending string, draw func(context.Context, *subject, wire.DrawOptions) ([]byte, error)) command {
	return func(ctx context.Context, s *session, v *desk.View, arguments []json.RawMessage) (any, error) {
		var uri string
		var o wire.DrawOptions
		for i, into := range []any{&uri, &o} {
			if i < len(arguments) && json.Unmarshal(arguments[i], into) != nil {
				return nil, &wire.Error{Code: wire.InvalidParams, Message: fmt.Sprintf("argument %d cannot be read", i+1)}
			}
		}
		doc, err := v.At(uri)
		if err != nil {
			return nil, refused(fmt.Errorf("%s cannot be read", desk.Path(uri)))
		}
		d, err := s.subject(ctx, v, doc, o.Name)
		if err != nil {
			return nil, err
		}
		made, err := draw(ctx, d, o)
		if err != nil {
			return nil, err
		}
		file, err := s.drawn.put(doc.Path, fmt.Sprintf("%s\x00%s\x00%d", o.Name, o.Of, o.Wide), ending, made)
		if err != nil {
			return nil, refused(fmt.Errorf("it cannot be written: %v", err))
		}
		at := desk.URI(file)
		if can := s.can().Window.ShowDocument; can != nil && can.Support && s.settings().Show {
			s.work.Go(func() { _ = s.ask(s.ctx, "window/showDocument", wire.ShowDocumentParams{URI: at, External: true}, nil) })
		}
		return at, nil
	}
}
