package lessons

import (
	"math"

	"maltwright/cmd/answer"
	"maltwright/sim/infer/learn"
)

// PredictionErrors are how far off batches were that were held out, by the kind of
// reading; nil where none has one of the kind.
type PredictionErrors struct {
	Weight      *RMSE[answer.Kilograms] `doc:"of the whole batch, in kg"`
	Moisture    *RMSE[answer.Share]     `json:"moisture_wb" doc:"by the same weights, in percentage points"`
	Acrospire   *RMSE[answer.Number]    `json:"acrospire_mean" doc:"mean length as a part of the kernel"`
	Temperature *RMSE[answer.Kelvin]    `doc:"in K"`
	Germination *RMSE[answer.Seconds]   `doc:"of how long it lasts, in hours"`
	Drying      *RMSE[answer.Seconds]   `doc:"of how long it lasts, in hours"`
}

// RMSE is a root mean square error: by what the other batches taught, and by the model as
// it stands.
type RMSE[T answer.Figure] struct {
	Count  int `doc:"of the readings, or of the lengths of time"`
	Learnt T
	Model  T
}

// Unit is that of its errors.
func (RMSE[T]) Unit() answer.Unit {
	var one T
	return one.Unit()
}

// Duration is how long something lasted that ends when something is reached, beside the
// plans that could have been made before the batch began.
type Duration struct {
	Batch    string
	What     string `doc:"germination or drying"`
	Recorded answer.Seconds
	Learnt   answer.Seconds
	Model    answer.Seconds
}

// foretold fills in how well batches foretell each other.
func (r *Result) foretold(l *learn.Result) {
	for _, x := range l.Durations {
		r.Durations = append(r.Durations, Duration{x.Batch.Name, string(x.What), answer.Seconds(x.Recorded), answer.Seconds(x.Learnt), answer.Seconds(x.Model)})
	}
	if len(l.Batches) < 2 {
		return
	}
	r.PredictionErrors = &PredictionErrors{Weight: missed[answer.Kilograms](l, learn.Weights), Moisture: missed[answer.Share](l, learn.Moistures),
		Acrospire: missed[answer.Number](l, learn.Acrospires), Temperature: missed[answer.Kelvin](l, learn.Temperatures),
		Germination: r.lasted(learn.Germination), Drying: r.lasted(learn.ToDry)}
}

func missed[T answer.Single](l *learn.Result, kind learn.Kind) *RMSE[T] {
	for _, m := range l.PredictionErrors {
		if m.Kind == kind {
			return &RMSE[T]{m.Readings, T(m.Learnt), T(m.Model)}
		}
	}
	return nil
}

// lasted sums up how far the plans of a length of time were off.
func (r *Result) lasted(what learn.Span) *RMSE[answer.Seconds] {
	n, learnt, model := 0, 0.0, 0.0
	for _, d := range r.Durations {
		if d.What == string(what) {
			n++
			learnt += square(d.Learnt - d.Recorded)
			model += square(d.Model - d.Recorded)
		}
	}
	if n == 0 {
		return nil
	}
	return &RMSE[answer.Seconds]{n, root(learnt, n), root(model, n)}
}

func square(s answer.Seconds) float64 { return float64(s) * float64(s) }

func root(sum float64, n int) answer.Seconds { return answer.Seconds(math.Sqrt(sum / float64(n))) }
