package follow

import (
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// middle is the forecast at the centre with every step ending when, and as moist and as
// heavy as, the middle of the forecasts has it: what falls due then goes by the times that
// the steps to come are told with. While nothing was read it is the forecast of the process alone, by which
// the batch was begun: the median of what may come is no better a plan than that, and one batch has one plan.
func (f *Following) middle() *forecast.Forecast {
	if f.plan != nil {
		m := *f.plan
		return &m
	}
	m, w := *f.Centre, f.warped()
	m.Stages = slices.Clone(m.Stages)
	was, wet := math.NaN(), math.NaN() // the moisture at the end of the step before, in the centre and in the middle
	for i := range m.Stages {
		st := &m.Stages[i]
		st.Steps = slices.Clone(st.Steps)
		for k := range st.Steps {
			s := &st.Steps[k]
			s.Start = w.at(s.Start)
			if s.MoistureStart == was {
				s.MoistureStart = wet
			}
			was = s.MoistureEnd
			if mid, ok := w.steps[keyOf(st.Kind, s)]; ok {
				s.End, s.MoistureEnd, s.WeightEnd = mid.end, mid.moisture, mid.weight
			} else {
				s.End = w.at(s.End)
			}
			s.End, wet = max(s.End, s.Start), s.MoistureEnd
		}
	}
	m.Gates = slices.Clone(m.Gates)
	for i := range m.Gates {
		g := &m.Gates[i]
		if i := slices.Index(w.from, g.Reached); i > 0 {
			g.Moisture = w.wet[i]
		}
		g.Reached, g.Ready, g.Ended = w.at(g.Reached), w.at(g.Ready), w.at(g.Ended)
	}
	m.Left = slices.Clone(m.Left)
	for i := range m.Left {
		w.left(&m.Left[i])
	}
	return &m
}

// Middle is the forecast that stands for all: at the centre, with every step ending when, and as
// moist and as heavy as, the middle of the forecasts has it. What the record says has been is as
// it was.
func (f *Following) Middle() *forecast.Forecast {
	m := f.middle()
	if f.plan != nil {
		return m
	}
	m.Totals.Total = f.warped().at(m.Totals.Total)
	if wet := f.Ensemble.Total(func(t *forecast.Totals) float64 { return t.FinalMoisture }); wet.Share >= most {
		m.Totals.FinalMoisture = wet.P50
	}
	m.Expects = slices.Clone(m.Expects)
	for i := range m.Expects {
		e := &m.Expects[i]
		now, ok := map[string]float64{vocabulary.MeasureTotalTime: m.Totals.Total, vocabulary.MeasureFinalMoisture: m.Totals.FinalMoisture}[e.Test.Measure]
		if ok && e.Test.Bound != nil && !e.Unjudged {
			e.Value, e.Holds = now, e.Test.Bound.Holds(now)
		}
	}
	return m
}

// stepKey tells the steps of a forecast apart.
type stepKey struct {
	stage  model.StageKind
	label  string
	number int
	at     int
}

func keyOf(stage model.StageKind, s *forecast.Step) stepKey {
	return stepKey{stage, s.Label, s.Number, s.Place.Start}
}

// finish is how a step ends in the middle of the forecasts.
type finish struct{ end, moisture, weight float64 }

// warp takes times of the centre to those of the middle of the forecasts: along straight
// lines between the ends of steps.
type warp struct {
	from, to []float64 // s from the first soak, rising
	wet      []float64 // then, in the middle
	steps    map[stepKey]finish
}

// most is the share of the members that must have a step for its middle to count.
const most = 0.5

func (f *Following) warped() warp {
	w := warp{from: []float64{0}, to: []float64{0}, wet: []float64{math.NaN()}, steps: map[stepKey]finish{}}
	all := map[stepKey]finish{}
	for _, s := range f.Ensemble.Steps() {
		if s.End.Share >= most && s.Label != forecast.Waiting { // who does not wait has no end of it
			all[stepKey{s.Stage, s.Label, s.Number, s.At}] = finish{s.End.P50, s.Moisture.P50, s.Weight.P50}
		}
	}
	for _, st := range f.Centre.Stages {
		for k := range st.Steps {
			s := &st.Steps[k]
			mid, ok := all[keyOf(st.Kind, s)]
			if last := len(w.to) - 1; ok && mid.end >= w.to[last] && s.End >= w.from[last] {
				w.from, w.to, w.wet = append(w.from, s.End), append(w.to, mid.end), append(w.wet, mid.moisture)
				w.steps[keyOf(st.Kind, s)] = mid
			}
		}
	}
	return w
}

// at is when something is in the middle of the forecasts that is at a time in the centre.
func (w warp) at(t float64) float64 {
	if math.IsNaN(t) || math.IsInf(t, 0) {
		return t
	}
	i, found := slices.BinarySearch(w.from, t)
	switch {
	case found:
		for i+1 < len(w.from) && w.from[i+1] == t {
			i++
		}
		return w.to[i]
	case i == 0:
		return t
	case i == len(w.from):
		return w.to[i-1] + t - w.from[i-1]
	}
	part := (t - w.from[i-1]) / (w.from[i] - w.from[i-1])
	return w.to[i-1] + part*(w.to[i]-w.to[i-1])
}

// left takes a condition that was left to the middle of the forecasts: its time, and what it asks of the
// moisture of a step that ended then.
func (w warp) left(l *forecast.Left) {
	if i := slices.Index(w.from, l.At); i > 0 {
		l.Moisture = w.wet[i]
		l.Tests = slices.Clone(l.Tests)
		for k := range l.Tests {
			if t := &l.Tests[k]; t.Test.Measure == vocabulary.MeasureMoisture && t.Test.Bound != nil {
				t.SI, t.Holds = l.Moisture, t.Test.Bound.Holds(l.Moisture)
			}
		}
	}
	l.At = w.at(l.At)
}
