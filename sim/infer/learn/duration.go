package learn

import (
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
)

// Duration is how long something lasted that ends when something is reached, beside the
// plan that could have been made before the batch began.
type Duration struct {
	Batch         *model.Batch
	What          Span
	Recorded      float64 // s
	Learnt, Model float64 // s, by what the other batches taught and by the model as it stands
}

// Span is what is timed.
type Span string

// The spans.
const (
	Germination Span = "germination" // on the floor, from the end of the steep
	ToDry       Span = "drying"      // on the kiln or the kilns, to the end of the last step of drying
)

// spans gives the steps of a span; both ends are theirs.
var spans = []struct {
	what Span
	of   func(*forecast.Forecast) []forecast.Step
}{
	{Germination, func(f *forecast.Forecast) []forecast.Step { return stepsOf(f, model.GerminateStage) }},
	{ToDry, func(f *forecast.Forecast) []forecast.Step {
		var steps []forecast.Step // from kiln to kiln there is no time between
		for _, st := range f.Stages {
			if st.Kind == model.KilnStage {
				steps = append(steps, st.Steps...)
			}
		}
		for len(steps) > 0 && steps[len(steps)-1].Kind != model.DryStep {
			steps = steps[:len(steps)-1]
		}
		return steps
	}},
}

// stepsOf gives the steps of the only stage of a kind.
func stepsOf(f *forecast.Forecast, kind model.StageKind) []forecast.Step {
	var steps []forecast.Step
	for _, st := range f.Stages {
		if st.Kind == kind && steps != nil {
			return nil
		}
		if st.Kind == kind {
			steps = st.Steps
		}
	}
	return steps
}

// durationsOf are the spans of a trial of which the record has both ends. The plans know
// of the record what was to be done otherwise, and nothing of what came about.
func durationsOf(t *evidence.Trial, learnt, model []float64) ([]Duration, error) {
	done, err := t.Run(model, false)
	if err != nil {
		return nil, err
	}
	a, err := planned(t, learnt)
	if err != nil {
		return nil, err
	}
	b, err := planned(t, model)
	if err != nil {
		return nil, err
	}
	var list []Duration
	for _, s := range spans {
		was, by, without := s.of(done), s.of(a), s.of(b)
		if len(was) == 0 || len(by) == 0 || !open(without) || !marked(t, was[0].Start) || !marked(t, was[len(was)-1].End) {
			continue
		}
		list = append(list, Duration{t.Batch, s.what, length(was), length(by), length(without)})
	}
	return list, nil
}

func planned(t *evidence.Trial, z []float64) (*forecast.Forecast, error) {
	o := t.Options(z)
	o.Course = &forecast.Course{Changes: t.Batch.Changes}
	o.Meter = t.Meter()
	return forecast.Run(t.Process, o)
}

func length(steps []forecast.Step) float64 { return steps[len(steps)-1].End - steps[0].Start }

// open tells whether one of the steps lasts until something is reached.
func open(steps []forecast.Step) bool {
	return slices.ContainsFunc(steps, func(s forecast.Step) bool { return s.EndedBy != forecast.ByTime })
}

// marked tells whether the record says that a step ended at a time.
func marked(t *evidence.Trial, at float64) bool {
	const minute = 60 // a record has no seconds
	return at == 0 || slices.ContainsFunc(t.Batch.Readings, func(x model.Reading) bool {
		return model.After(x) != nil && !x.When().IsZero() && math.Abs(x.When().Sub(t.Batch.Began.Time).Seconds()-at) < minute
	})
}
