package learn

import (
	"context"
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
)

// Kind is a kind of reading by which a forecast is judged.
type Kind string

// The kinds.
const (
	Weights      Kind = "weight"      // kg of the whole batch
	Moistures    Kind = "moisture"    // what the same weights say, as a share of the weight
	Acrospires   Kind = "acrospire"   // mean length as a share of the kernel
	Temperatures Kind = "temperature" // K
)

var kinds = []Kind{Weights, Moistures, Acrospires, Temperatures}

// PredictionError is the root mean square of how far the readings of batches that were
// held out are from their forecast: by what the others taught, and by the model as it
// stands. Their own weather and moistures are taken as usual in both.
type PredictionError struct {
	Kind                        Kind
	Readings                    int
	Learnt, Model               float64
	learntSquares, modelSquares float64
}

// crossValidate holds out each batch in turn. What the others teach is taken from the fit of
// all, by what they pull (evidence.Together.Without), and not from fits of their own.
func (f *fit) crossValidate(ctx context.Context, o Options) ([]PredictionError, []Duration, error) {
	type held struct {
		misses  []PredictionError
		lengths []Duration
	}
	all, tell := make([]held, len(f.trials)), o.counting(HoldingOut, len(f.trials))
	err := ensemble.Each(ctx, o.Workers, len(f.trials), func(i int) (err error) {
		defer tell()
		t, learnt := f.trials[i], f.pointOf(i)
		model := make([]float64, len(t.Axes))
		if all[i].misses, err = errorsOf(t, learnt, model); err != nil {
			return err
		}
		all[i].lengths, err = durationsOf(t, learnt, model)
		return err
	})
	if err != nil {
		return nil, nil, err
	}
	misses, lengths := noErrors(), []Duration(nil)
	for _, h := range all {
		for k := range misses {
			misses[k].add(h.misses[k])
		}
		lengths = append(lengths, h.lengths...)
	}
	for i := range misses {
		m := &misses[i]
		n := float64(m.Readings)
		m.Learnt, m.Model = math.Sqrt(m.learntSquares/n), math.Sqrt(m.modelSquares/n)
	}
	return slices.DeleteFunc(misses, func(m PredictionError) bool { return m.Readings == 0 }), lengths, nil
}

// noErrors has a sum of every kind, of nothing yet.
func noErrors() []PredictionError {
	list := make([]PredictionError, len(kinds))
	for i, k := range kinds {
		list[i].Kind = k
	}
	return list
}

func (m *PredictionError) add(more PredictionError) {
	m.Readings += more.Readings
	m.learntSquares += more.learntSquares
	m.modelSquares += more.modelSquares
}

// errorsOf sums up how far the readings of a trial are from a forecast at each of two
// points of its axes.
func errorsOf(t *evidence.Trial, learnt, model []float64) ([]PredictionError, error) {
	misses := noErrors()
	a, err := t.Run(learnt, true)
	if err != nil {
		return nil, err
	}
	b, err := t.Run(model, true)
	if err != nil {
		return nil, err
	}
	for i := range t.Observations {
		m := &t.Observations[i]
		if m.Struck {
			continue
		}
		x, y := off(m, a, t.Offset(learnt)), off(m, b, t.Offset(model))
		for k := range misses {
			dx, ok := x[misses[k].Kind]
			if dy, too := y[misses[k].Kind]; ok && too {
				misses[k].add(PredictionError{Readings: 1, learntSquares: dx * dx, modelSquares: dy * dy})
			}
		}
	}
	return misses, nil
}

// off is by how much a reading is more than a forecast has it, by kind; empty where it
// has nothing for it, and for readings that are judged by no such measure.
func off(m *evidence.Observation, f *forecast.Forecast, offset float64) map[Kind]float64 {
	expected := m.Expect(f, offset)
	if math.IsNaN(expected) {
		return nil
	}
	switch x := m.Reading; {
	case model.Weight(x) != nil:
		s, ratio := m.Sight(f), m.Value/expected // the ratio is the same of a bag
		return map[Kind]float64{Weights: s.Weight * (ratio - 1), Moistures: (1 - s.Moisture) * (1 - 1/ratio)}
	case model.Thermometer(x) != nil:
		return map[Kind]float64{Temperatures: m.Value - expected}
	case model.CountOf(x, model.Acrospire) != nil:
		return map[Kind]float64{Acrospires: m.Value - expected}
	}
	return nil
}
