package outlook

import (
	"slices"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// Short is grain that comes out of the steep with less moisture than its process asks for.
type Short struct {
	Moisture answer.Share // by its weight
	Least    answer.Share // that is asked for
	Waits    bool         // a condition asks for it; else the steep aims at it
	Text     string       // as it is written
}

// tooDry is how far under what is asked for grain is too dry, of moisture: the dry matter of a lot is hardly known
// better than to half of it.
const tooDry = 0.01

// ShortOf tells of grain that is so moist after a step whether that step is the end of its steep, and the moisture
// clearly under what the steep asks for; nil where it is not.
func ShortOf(f *forecast.Forecast, after *model.StepName, moisture float64) *Short {
	for _, st := range f.Stages {
		steep, ok := st.Of.(*model.Steep)
		if !ok || !endsWith(st.Steps, after, string(st.Of.Kind())) {
			continue
		}
		s := askedOf(steep)
		if s == nil || moisture > float64(s.Least)-tooDry {
			return nil
		}
		s.Moisture = answer.Share(moisture)
		return s
	}
	return nil
}

// endsWith tells whether a name is that of a stage, or of its last soak.
func endsWith(steps []forecast.Step, name *model.StepName, stage string) bool {
	if name.Kind.Text == stage {
		return true
	}
	isSoak := func(s forecast.Step) bool { return s.Kind == model.SoakStep }
	if name.Kind.Text != string(model.SoakStep) || !slices.ContainsFunc(steps, isSoak) {
		return false
	}
	first := steps[slices.IndexFunc(steps, isSoak)].Nth
	last := first
	for _, s := range steps {
		if isSoak(s) {
			last = s.Nth
		}
	}
	return name.Number >= first && name.Number >= last || name.Number == 0 && first == last
}

// askedOf is the least moisture that a steep asks for: by its condition, by that of what it repeats, or by its aim.
func askedOf(steep *model.Steep) *Short {
	list := []*model.Condition{steep.Until}
	for _, step := range steep.Steps {
		if r, ok := step.(*model.Repeat); ok {
			list = append(list, r.Until)
		}
	}
	for _, c := range list {
		if c == nil {
			continue
		}
		for _, t := range c.Tests {
			if t.Measure == vocabulary.MeasureMoisture && t.Bound != nil && t.Bound.Op != quantity.AtMost && t.Bound.Op != quantity.Below {
				return &Short{Least: answer.Share(t.Bound.Range.Low.SI), Waits: true, Text: strings.Join(strings.Fields(t.Place.Text()), " ")}
			}
		}
	}
	if steep.Target == nil {
		return nil
	}
	return &Short{Least: answer.Share(steep.Target.Low.SI), Text: steep.Target.Range.String()}
}
