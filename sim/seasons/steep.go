package seasons

import (
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// steep makes the figures of the steep.
func (r *record) steep(s *Season) {
	if read := r.temperatures(vocabulary.PlaceWater); len(read) > 0 {
		sum := 0.0
		for _, t := range read {
			sum += t
		}
		s.Water = Figure{sum / float64(len(read)), Measured}
	}
	r.cast(s)
	for _, reading := range r.b.Readings {
		if x := model.CountOf(reading, model.Chit); x != nil && len(x.Kernels) > 0 && x.Of != nil && x.Of.SI > 0 {
			s.Chit, s.ChitAt = Figure{x.Kernels[0].SI / x.Of.SI, Measured}, r.since(x.When())
		}
	}
}

// cast makes the figures of steep-out from the last weighing of the steep, with the
// dry matter that the forecast leaves there. Without its time that of the forecast
// stands in; a weighing that is not the last of the steep tells neither.
func (r *record) cast(s *Season) {
	last := r.last(func(x *model.Weighed) bool { return steeping(x.After) })
	weight := r.weight(last)
	share, ok := r.left(model.SteepStage)
	if ok && weight.Standing != Missing && r.dry() > 0 {
		w, dry := r.moisture(weight.Value, share)
		switch {
		case w < 0:
			s.Doubts = append(s.Doubts, Doubt{Weight: weight.Value, Dry: dry})
		case r.lastOfSteep(last.After) || r.wetEnough(w):
			s.CastMoisture = Figure{w, Reckoned}
			if !weight.Known() || w > forecast.MostMoisture(r.b.Process) {
				s.CastMoisture.Standing = Impossible
			}
		}
	}
	if last != nil && (r.lastOfSteep(last.After) || s.CastMoisture.Known()) {
		s.Cast = r.since(last.When())
	}
	if !s.Cast.Known() && r.f != nil && r.f.Totals.SteepOut > 0 { // a NaN is not
		s.Cast = Figure{r.f.Totals.SteepOut, Reckoned}
	}
}

func steeping(s *model.StepName) bool {
	return s != nil && (s.Kind.Text == string(model.SoakStep) || s.Kind.Text == string(model.RestStep))
}

// lastOfSteep tells whether the forecast has no further soak or rest of this kind.
func (r *record) lastOfSteep(s *model.StepName) bool {
	count := 0
	for _, step := range r.steps(model.SteepStage) {
		if string(step.Kind) == s.Kind.Text {
			count++
		}
	}
	return count > 0 && (s.Number >= count || s.Number == 0 && count == 1)
}

// wetEnough tells whether a moisture reaches what the last steep is to come to.
func (r *record) wetEnough(w float64) bool {
	st := model.Last[*model.Steep](r.b.Process)
	return st != nil && st.Target != nil && w >= st.Target.Low.SI
}
