package records

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/work"
)

const (
	far       = 5.0 // errors from which on a reading is told
	near      = 2.0 // errors within which a slip explains it
	mostTold  = 3   // of more readings that disagree only the farthest is told: they have one cause
	backwards = 3.0 // errors by which a count goes back
)

// held is the record beside the course that fits it best.
type held struct {
	trial  *evidence.Trial
	centre *forecast.Forecast
	off    []float64
	offset float64   // K, of the thermometer
	z      []float64 // of the axes, there
	lines  *evidence.Linearised
	seats  []int // of each o, its place among the readings of the batch
}

// doubts holds the readings beside a forecast that keeps to the record.
func (r *record) doubts() {
	h := r.hold()
	if h == nil {
		return
	}
	for i := range h.off {
		r.tooLight(h, i)
		if r.dryByCharge(h, i) {
			return // what comes behind a step that had not ended is all at the wrong hour
		}
	}
	var loud []int
	for i, off := range h.off {
		if math.Abs(off) > far && !r.aside[h.seats[i]] {
			loud = append(loud, i)
		}
	}
	sorted.Stable(loud, func(a, b int) int { return cmp.Compare(math.Abs(h.off[b]), math.Abs(h.off[a])) })
	if len(loud) > mostTold {
		loud = loud[:1]
	}
	for _, i := range loud {
		r.slip(h.seats[i], r.doubt(h, i))
	}
	for i := range h.off {
		r.withHolder(h, i)
		r.heavierAgain(h, i)
		r.goesBack(h, i)
		r.shrinks(h, i)
		r.offSetting(h, i)
	}
}

// hold linearises the record, and fits the record where that shows a reading far off. What is
// in doubt already is left out. It is nil where there is nothing to hold, or it would cost
// too much: what is told by half a look might be told in error.
func (r *record) hold() *held {
	kept := *r.batch
	kept.Readings = nil
	var seats []int
	for i, x := range r.batch.Readings {
		if !r.aside[i] {
			kept.Readings, seats = append(kept.Readings, x), append(seats, i)
		}
	}
	t, err := evidence.New(&kept, time.Time{})
	if err != nil || len(t.Observations) == 0 {
		return nil
	}
	t.Bound(r.bound.ctx, r.bound.pool)
	g, err := t.Linearise(r.bound.ctx)
	if err != nil {
		return nil
	}
	h := &held{trial: t, centre: g.Centre, off: g.Residuals, lines: &g, z: make([]float64, len(t.Axes))}
	h.loosen()
	for _, o := range t.Observations {
		k := slices.IndexFunc(kept.Readings, func(x model.Reading) bool { return x.Place() == o.Reading.Place() })
		if k < 0 { // a tested moisture is no reading, and has no seat among them
			h.seats = append(h.seats, len(r.batch.Readings)+o.Reading.Place().Start)
			continue
		}
		h.seats = append(h.seats, seats[k])
	}
	if !slices.ContainsFunc(h.off, func(v float64) bool { return math.Abs(v) > far }) {
		return h
	}
	z, err := g.Mode()
	if errors.Is(err, work.ErrPool) {
		return nil
	}
	if err != nil {
		return h
	}
	if h.centre, err = t.Run(z, false); err != nil {
		return nil
	}
	h.off, h.offset, h.z = t.Residuals(h.centre, z), t.Offset(z), z
	h.loosen()
	return h
}

// doubt says what speaks against a reading.
func (r *record) doubt(h *held, i int) finding.Finding {
	o := &h.trial.Observations[i]
	said, place := words(o.Reading)
	expected := o.Expect(h.centre, h.offset)
	if math.IsNaN(expected) {
		f := readingDoubtful.At(place, fmt.Sprintf("%s: the other lines say that this cannot be read at that time", said))
		f.Hint = "look at its time, and at the kind of reading"
		if model.After(o.Reading) != nil {
			f.Hint = "look at its time, and at the step behind \"after\""
		}
		if slip := r.slipOf(h, i); slip != "" {
			f.Hint = slip
		}
		return f
	}
	f := readingDoubtful.At(place, fmt.Sprintf("%s: the process and the other readings make %s likely", said, r.likely(h, i, expected)))
	if slip := r.slipOf(h, i); slip != "" {
		f.Hint = slip
	}
	if k := r.gained(h, i); k >= 0 {
		f.Related = []finding.Related{{Place: h.trial.Observations[k].Reading.Place(), Message: "the malt only dries, and was lighter here"}}
	}
	return f
}

// goesBack finds a count that is less than one before it by more than chance.
func (r *record) goesBack(h *held, i int) {
	o := &h.trial.Observations[i]
	if !model.Is[*model.Counted](o.Reading) && model.Rub(o.Reading) == "" || r.aside[h.seats[i]] {
		return
	}
	for k := i - 1; k >= 0; k-- {
		x := &h.trial.Observations[k]
		if model.Counts(x.Reading) != model.Counts(o.Reading) || (model.Rub(x.Reading) == "") != (model.Rub(o.Reading) == "") || r.aside[h.seats[k]] {
			continue
		}
		back := (x.Value - o.Value) / math.Hypot(x.Error, o.Error)
		if model.Rub(o.Reading) != "" && !(model.Rub(x.Reading) == vocabulary.RubChalky && model.Rub(o.Reading) == vocabulary.RubGummy) || back <= backwards {
			continue
		}
		at, other := o, x
		if math.Abs(h.off[k]) > math.Abs(h.off[i]) {
			at, other = x, o
		}
		said, place := words(at.Reading)
		f := readingDoubtful.At(place, said+": growth never goes back")
		f.Hint = "look at the numbers, and count more kernels"
		f.Related = []finding.Related{{Place: other.Reading.Place(), Message: "it contradicts this"}}
		r.slip(h.seats[slices.IndexFunc(h.trial.Observations, func(m evidence.Observation) bool { return m.Reading == at.Reading })], f)
		return
	}
}
