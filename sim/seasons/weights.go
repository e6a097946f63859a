package seasons

import (
	"math"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// charge gives the weight of the raw grain, kg, or 0 where it is not said.
func (r *record) charge() float64 {
	if p := r.b.Process; p != nil && p.Charge != nil {
		return p.Charge.SI
	}
	return 0
}

// rawMoisture gives the moisture of the raw grain: what the oven took off the sample,
// w = (wet − dry)/wet; without one what the lot says, which somebody has measured;
// without that what the forecast takes for granted. A sample that raw grain cannot have
// is none.
func (r *record) rawMoisture() Figure {
	if w, can := r.b.SampleMoisture(); can {
		return Figure{w, Measured}
	}
	if p := r.b.Process; p != nil && p.Grain != nil {
		if m := p.Grain.Moisture; m != nil {
			return Figure{m.SI, Measured}
		}
		return Figure{forecast.MoistureOf(p.Grain), Reckoned}
	}
	return Figure{}
}

// dry gives the dry matter of the raw grain, kg, or 0 where it is not known.
func (r *record) dry() float64 {
	if w := r.rawMoisture(); w.Known() && w.Value < 1 {
		return r.charge() * (1 - w.Value)
	}
	return 0
}

// weight gives what a reading says the whole batch weighs, kg: without the tare, and
// from a bag in proportion to the grain in it, which is reckoned. A weight that the
// grain cannot have, which check reports, is impossible.
func (r *record) weight(x *model.Weighed) Figure {
	if x == nil {
		return Figure{}
	}
	net, raw, _ := r.b.Net(x)
	f := Figure{net, Measured}
	if x.OfBag {
		if raw == nil || r.charge() <= 0 {
			return Figure{}
		}
		f = Figure{net / raw.SI * r.charge(), Reckoned}
	}
	switch {
	case net <= 0:
		return Figure{}
	case r.b.Impossible(x, forecast.MostMoisture(r.b.Process)) != "":
		f.Standing = Impossible
	}
	return f
}

// last gives the last weighing that the test takes; where batch and bag are both
// weighed after one step, that of the batch.
func (r *record) last(takes func(*model.Weighed) bool) *model.Weighed {
	var best *model.Weighed
	for _, reading := range r.b.Readings {
		x, ok := reading.(*model.Weighed)
		if !ok || !takes(x) {
			continue
		}
		if best == nil || best.OfBag || !x.OfBag || !sameStep(best.After, x.After) {
			best = x
		}
	}
	return best
}

func sameStep(a, b *model.StepName) bool {
	return a == b || a != nil && b != nil && a.Kind.Text == b.Kind.Text && a.Number == b.Number
}

// left gives the share of the dry matter that the forecast leaves at the end of a
// stage: weight·(1 − w) there, by charge·(1 − w₀). It is false where the forecast does
// not come to the end of a steep.
func (r *record) left(kind model.StageKind) (share float64, ok bool) {
	steps := r.steps(kind)
	if len(steps) == 0 || r.charge() <= 0 || kind == model.SteepStage && math.IsNaN(r.f.Totals.SteepOut) {
		return 0, false
	}
	end := steps[len(steps)-1]
	for _, st := range r.f.Stages {
		if len(st.Steps) > 0 {
			before := r.charge() * (1 - st.Steps[0].MoistureStart)
			share = end.WeightEnd * (1 - end.MoistureEnd) / before
			return share, share > 0 && share <= 1 // false for a NaN too
		}
	}
	return 0, false
}

// steps are those of the stages of a kind as the forecast runs them.
func (r *record) steps(kind model.StageKind) (list []forecast.Step) {
	if r.f == nil {
		return nil
	}
	for _, st := range r.f.Stages {
		if st.Kind == kind {
			list = append(list, st.Steps...)
		}
	}
	return list
}

// moisture gives the moisture of a batch of a weight in which a share of the dry
// matter is left, w = 1 − dry·share/weight, and that dry matter. It is below nothing where
// the weight is less than that.
func (r *record) moisture(weight, share float64) (w, dry float64) {
	dry = r.dry() * share
	return 1 - dry/weight, dry
}

// ends tells whether a step is the last of the last stage of a kind: it is named like
// the stage, or it is the last of the kind with which the stage ends.
func (r *record) ends(s *model.StepName, kind model.StageKind) bool {
	if s == nil {
		return false
	}
	if s.Kind.Text == string(kind) {
		return s.Number == 0 || r.b.Process == nil || s.Number >= r.b.Process.Count(kind)
	}
	ending, count := r.ending(kind)
	return s.Kind.Text == ending && (s.Number >= count || s.Number == 0 && count == 1)
}

// ending gives the kind of step with which the last stage of a kind ends, by its process,
// and how many of it there are in all its stages. Cooling ends a kiln whether it is weighed or not.
func (r *record) ending(kind model.StageKind) (string, int) {
	if r.b.Process == nil {
		return "", 0
	}
	last, count := "", map[string]int{}
	for _, st := range r.b.Process.Stages {
		if st.Kind() != kind {
			continue
		}
		last = ""
		for _, s := range model.StepsOf(st) {
			if s.Kind() == model.GateStep || s.Kind() == model.CoolStep {
				continue
			}
			last = string(s.Kind())
			count[last]++
		}
	}
	return last, count[last]
}
