// Package learn fits what is proper to a house to its finished batches.
//
// # How it works
//
// Each batch is a trial of the evidence, taken as if the house had learnt nothing yet.
// What the batches have in common is one axis for all of them (axes.go): growth,
// respiration, withering and the thermometer for all, uptake, husk water and chit for
// those of one lot, drying for those of one kiln. What the equations miss is left out. The rest - weather, moistures, where in its bands a batch was
// held - is each batch's own. All axes are fitted at once, so that a cold week is not
// put down to the house.
//
// Batches of one house differ as well. Where six or more tell of a factor, it is sought by how
// much they scatter about it (scatter.go), and its error has that in it; with fewer they are
// taken to have it in common, and a forecast leaves room for what they may differ by.
//
// What older batches taught may be where it begins (from.go), so that they need not be read
// again.
//
// A factor (factor.go) is what such an axis comes to, with its standard error and the
// share of its prior variance that the readings explain. One of which they explain less
// than half would only repeat the model, and counts as not known.
//
// How good it is tells leave-one-out cross-validation (crossvalidation.go): each batch is
// held out in turn, and its readings stand beside the forecast of what the others teach.
// That is taken from the one fit of all, so that the forecasts which are made grow with the
// number of batches, and not with its square.
package learn

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"maltwright/lang/model"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/work"
)

// Options are those of learning.
type Options struct {
	Workers           int  // forecasts that run at once; 0 is one a core
	NoCrossValidation bool // there are then no prediction errors and durations

	// From is what older batches taught, which are not among these: value and error of its
	// figures are where this learning begins; nil begins with what is usual.
	From *model.Learnt

	Progress func(doing Doing, done, of int) // called now and then, from one goroutine at a time; may be nil
}

// Result is what finished batches taught.
type Result struct {
	Batches          []*model.Batch // those that were used, in the order given
	Left             []Left
	Struck           []Struck // readings that were not used since they cannot be
	Replaces         []string // names of house blocks that the processes have already, and that were not used
	Factors          []Factor
	Correlated       []Pair            // factors that the readings hardly tell from something else
	Singles          []Single          // what each batch says by itself
	PredictionErrors []PredictionError // of batches held out; empty for a single batch
	Durations        []Duration        // of steps of batches held out that end when something is reached
}

// Left is a batch that was not used.
type Left struct {
	Batch  *model.Batch
	Reason error // ErrUnread, ErrUnseen, ErrBrokenOff, TooDear, one of package evidence, or why its process cannot be forecast
}

// Struck is a reading that was not used: a weight that cannot be.
type Struck struct {
	Batch   *model.Batch
	Reading model.Reading
}

// ErrNothing says that no batch could be used; the result says of each why.
var ErrNothing = errors.New("no batch from which anything could be learnt")

// Reasons for which a batch is not used.
var (
	ErrUnread = errors.New("some of its record does not read")
	ErrUnseen = errors.New("nothing was weighed, counted, felt or read")

	ErrBrokenOff = errors.New("the forecast of its process breaks off before what was read; maltwright forecast says where, and why")
)

// TooMany are more batches than it learns from at a time. Its text is for programmers, as
// is that of TooDear.
type TooMany struct{ Batches, Most int }

func (e TooMany) Error() string { return fmt.Sprintf("%d batches, above %d", e.Batches, e.Most) }

// TooDear is a batch of which one forecast takes more steps of the model than each of
// hundreds may.
type TooDear struct{ Most int }

func (e TooDear) Error() string { return fmt.Sprintf("a forecast takes over %d steps", e.Most) }

// MostBatches is from how many it learns at a time.
const MostBatches = 200

// Of learns from finished batches. It gives ErrNothing where none can be used, the
// error of the context when it is cancelled, and that of a forecast which cannot begin
// at a point where it was fitted.
func Of(ctx context.Context, batches []*model.Batch, o Options) (*Result, error) {
	if len(batches) > MostBatches {
		return nil, TooMany{len(batches), MostBatches}
	}
	r := &Result{}
	var trials []*evidence.Trial
	pool := work.NewPool(work.Shared * ofFit * len(batches))
	for _, b := range batches {
		t, err := trialOf(ctx, b, pool)
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		if err != nil {
			r.Left = append(r.Left, Left{b, err})
			continue
		}
		trials = append(trials, t)
		r.Batches = append(r.Batches, b)
		for _, x := range t.Struck() {
			r.Struck = append(r.Struck, Struck{b, x})
		}
		r.replaces(b, o.From)
	}
	if len(trials) == 0 {
		return r, ErrNothing
	}
	f, err := fitted(ctx, trials, o)
	if err != nil {
		return nil, err
	}
	r.Factors, r.Correlated = f.factors(o.From), correlated(f, trials, f.columns)
	r.Singles = f.singles()
	if len(trials) > 1 && !o.NoCrossValidation {
		r.PredictionErrors, r.Durations, err = f.crossValidate(ctx, o)
	}
	return r, err
}

// ofFit is what learning may cost for each of its batches, in forecasts that take all they
// may: usually it makes some forty of each batch, and each of them takes a sixth of that.
const ofFit = 40

// replaces notes the house block by which the batch's process goes, unless that is where it begins.
func (r *Result) replaces(b *model.Batch, from *model.Learnt) {
	l := b.Process.Learnt()
	if l == nil || from != nil && l.Name == from.Name {
		return
	}
	for _, name := range r.Replaces {
		if name == l.Name {
			return
		}
	}
	r.Replaces = append(r.Replaces, l.Name)
}

// trialOf makes the trial of a batch, if it can be forecast and says something.
func trialOf(ctx context.Context, b *model.Batch, pool *work.Pool) (*evidence.Trial, error) {
	if b.Broken {
		return nil, ErrUnread
	}
	t, err := evidence.New(evidence.Unlearnt(b), time.Time{})
	if err == nil { // a factor is to be good in a forecast that has the equations as they are
		t.Axes = slices.DeleteFunc(t.Axes, func(a evidence.Axis) bool { return a.Missed() })
	}
	switch {
	case err != nil:
		return nil, err
	case len(t.Observations) == 0:
		return nil, ErrUnseen
	}
	t.Bound(ctx, pool)
	switch err := t.Affordable(); {
	case errors.Is(err, work.ErrPool):
		return nil, TooDear{work.Shared}
	case err != nil:
		return nil, fmt.Errorf("its process cannot be forecast: %w", err)
	case t.BreaksOff():
		return nil, ErrBrokenOff
	}
	return t, nil
}
