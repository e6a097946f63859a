package visits

import (
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// steep lists the filling and draining of every soak. The end of each step is one task,
// which says what Ends; what else is done at that time does not.
func (l *lister) steep(st forecast.Stage) {
	weight := l.weight
	for i := range st.Steps {
		s := &st.Steps[i]
		if s.Kind == model.SoakStep && (i == 0 || st.Steps[i-1].Kind != model.RestStep) {
			l.add(l.fill(s, s.Start, s.MoistureStart, weight))
		}
		l.steepEnd(s, following(st.Steps, i), weight)
		weight = s.WeightEnd
	}
	l.gates(st)
}

func following(steps []forecast.Step, i int) *forecast.Step {
	if i+1 < len(steps) {
		return &steps[i+1]
	}
	return nil
}

// steepEnd lists what the end of a step of the steep asks for.
func (l *lister) steepEnd(s, next *forecast.Step, before float64) {
	var t Task
	switch {
	case s.Kind == model.GateStep:
		l.waited(model.SteepStage, s, before)
		t = l.tasks[len(l.tasks)-1]
		l.tasks = l.tasks[:len(l.tasks)-1]
	case s.Kind == model.SoakStep:
		t = ending(s, Drain, model.SteepStage)
		t.Each = weighings(l.of.(*model.Steep), s.WeightEnd)
		if next != nil && next.Kind == model.RestStep {
			t.Temperature, t.Lasts, t.With = next.Temperature, took(next, l.steps[next.Place]), with(l.steps[next.Place])
		}
	case next != nil && next.Kind == model.SoakStep:
		t = l.fill(next, s.End, s.MoistureEnd, s.WeightEnd)
	default:
		t = ending(s, EndRest, model.SteepStage)
	}
	t.Ends, t.Place = s.Label, s.Place
	l.add(t)
}

func (l *lister) fill(s *forecast.Step, when, moisture, weight float64) Task {
	t := at(when, Fill, model.SteepStage, s.Place)
	t.Name, t.Temperature, t.Lasts, t.Moisture, t.Weight = s.Label, s.Temperature, took(s, l.steps[s.Place]), moisture, weight
	t.With = with(l.steps[s.Place])
	if soak, ok := l.steps[s.Place].(*model.Soak); ok {
		t.Water = soak.Water
	}
	st := l.of.(*model.Steep)
	t.Shares = l.portions(st, s, weight)
	if v := st.Vessel; v != nil && len(t.Shares) == 0 {
		t.Where = v.Name
	}
	return t
}

// with lists what a soak or a rest is with, in words of the language.
func with(s model.Step) string {
	var list []string
	add := func(word string, there bool, flow *model.Quantity) {
		if there && flow != nil {
			word += " " + flow.String()
		}
		if there {
			list = append(list, word)
		}
	}
	switch s := s.(type) {
	case *model.Soak:
		add(vocabulary.WithAir, s.Aerated, nil)
		add(vocabulary.WithLime, s.Limed, nil)
		add(vocabulary.WithAirflow, s.Airflow != nil, s.Airflow)
		add(vocabulary.WithOverflow, s.Overflow != nil, s.Overflow)
	case *model.Rest:
		add(vocabulary.WithAirflow, s.Airflow != nil, s.Airflow)
		if s.Spray != nil {
			add(vocabulary.WithSpray, true, s.Spray.Flow)
		}
	}
	return strings.Join(list, " "+vocabulary.And+" ")
}
