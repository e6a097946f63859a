package learn

import (
	"context"
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
)

// Kind is a kind of reading by which a forecast is judged.
type Kind string

// The kinds.
const (
	Weights      Kind = "weight"      // kg of the whole batch
	Moistures    Kind = "moisture"    // what the same weights say, as a share of the weight
	Acrospires   Kind = "acrospire"   // mean length as a share of the corn
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

// crossValidate holds out each batch in turn, and fits the others.
func crossValidate(ctx context.Context, trials []*evidence.Trial, workers int) ([]PredictionError, []Duration, error) {
	misses := make([]PredictionError, len(kinds))
	for i, k := range kinds {
		misses[i].Kind = k
	}
	var lengths []Duration
	for i, t := range trials {
		others := slices.Delete(slices.Clone(trials), i, i+1)
		f, err := fitted(ctx, others, workers)
		if err != nil {
			return nil, nil, err
		}
		learnt, model := f.point(t), make([]float64, len(t.Axes))
		if err := addErrors(t, learnt, model, misses); err != nil {
			return nil, nil, err
		}
		more, err := durationsOf(t, learnt, model)
		if err != nil {
			return nil, nil, err
		}
		lengths = append(lengths, more...)
	}
	for i := range misses {
		m := &misses[i]
		n := float64(m.Readings)
		m.Learnt, m.Model = math.Sqrt(m.learntSquares/n), math.Sqrt(m.modelSquares/n)
	}
	return slices.DeleteFunc(misses, func(m PredictionError) bool { return m.Readings == 0 }), lengths, nil
}

// addErrors adds how far the readings of a trial are from a forecast at each of two
// points of its axes.
func addErrors(t *evidence.Trial, learnt, model []float64, misses []PredictionError) error {
	a, err := t.Run(learnt, true)
	if err != nil {
		return err
	}
	b, err := t.Run(model, true)
	if err != nil {
		return err
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
				misses[k].Readings++
				misses[k].learntSquares += dx * dx
				misses[k].modelSquares += dy * dy
			}
		}
	}
	return nil
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
