package margin

import (
	"context"
	"time"

	"maltwright/check"
	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/answer/noted"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/syntax"
	"maltwright/sim/work"
)

// Record is what the readings of the batches of a file come to, and how much longer each batch takes as of now. A
// batch costs some dozen forecasts, which spend from a pool of all of them. The error is that of the context.
func Record(ctx context.Context, tree *syntax.Tree, r check.Report, now time.Time) (Margin, error) {
	m := Margin{File: tree.File, tree: tree}
	w := writer{m: &m, places: placesOf(tree)}
	pool := work.NewPool(work.Records)
	for _, b := range r.House.Batches {
		w.batch(ctx, b, r, now, pool)
		if ctx.Err() != nil {
			return m, ctx.Err()
		}
	}
	m.sort()
	return m, nil
}

// batch writes what is said of one batch.
func (w *writer) batch(ctx context.Context, b *model.Batch, r check.Report, now time.Time, pool *work.Pool) {
	lens := Lens{Of: b.Place.Span, Name: b.Name, Batch: true}
	found := bearing(r.House, r.Findings, b.Process, b)
	lens.say(found, false, "")
	defer func() { w.m.Lenses = append(w.m.Lenses, lens) }()
	if !sound(b, r.House, r.Findings) {
		return
	}
	at, _ := progress.When(b, now)
	s, ok := noted.Stand(ctx, b, at, pool)
	if !ok {
		return
	}
	w.m.told = append(w.m.told, b.Place.Span)
	h := words.OfBatch(b.Process, b)
	said := h.MarginStanding(s, nextOf(s, at), at, now)
	for _, x := range s.Lines {
		if model.Clean(x.Of) {
			said = h.MarginOver(x.Result)
		}
		w.reading(h, x)
	}
	lens.Drawn = true
	lens.say(found, true, said)
}

// reading writes what a reading comes to.
func (w *writer) reading(h words.House, x noted.Line) {
	at, ok := w.places.of(x.Of.Place())
	text := h.MarginReading(x.Result)
	if !ok || text == "" {
		return
	}
	more := h.Reading(x.Result)
	if d := x.Result.Doubt; d != nil {
		message, hint := h.DoubtOf(*d, model.Weight(x.Of).String()) // only weights are doubted so
		more = joined([]string{more, words.Safe(words.Joined("; ", message, hint))})
	}
	w.m.Hints = append(w.m.Hints, Hint{Readings, at.behind, at.head, text, more})
	w.beside(at.head, more)
}

// nextOf is the first visit behind a time, nil where there is none.
func nextOf(s noted.Standing, at time.Time) *noted.Visit {
	for i := range s.Visits {
		if s.Visits[i].Time.After(at) {
			return &s.Visits[i]
		}
	}
	return nil
}

// sound tells whether there is something sound to hold a batch beside.
func sound(b *model.Batch, h *model.House, found []finding.Finding) bool {
	return b.Process != nil && !b.Broken && !b.Began.IsZero() && ledger.Sound(h, b, found)
}
