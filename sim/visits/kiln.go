package visits

import (
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// kiln lists the work at the kiln.
func (l *lister) kiln(st forecast.Stage) {
	stage := st.Of.(*model.Kilning)
	before := l.weight
	for i := range st.Steps {
		l.kilnStep(stage, &st.Steps[i], i == 0, before)
		before = st.Steps[i].WeightEnd
	}
	l.stirs(stage, st.Steps)
	l.gates(st)
	t := ending(&st.Steps[len(st.Steps)-1], Unload, st.Kind)
	t.Where = kilnName(stage)
	if low := l.p.Giver(stage); low != nil {
		t.With = kilnName(low)
	}
	l.add(t)
}

func kilnName(st *model.Kilning) string {
	if st.Kiln == nil {
		return ""
	}
	return st.Kiln.Name
}

// kilnStep lists what the beginning of a step asks for, and the looks in it.
func (l *lister) kilnStep(stage *model.Kilning, s *forecast.Step, loading bool, before float64) {
	if s.Kind == model.GateStep && s.Place == stage.Place() {
		return // for the floor below to be free: nobody has to come
	}
	if s.Kind == model.GateStep {
		l.waited(model.KilnStage, s, before)
		return
	}
	kind := Heat
	switch {
	case loading:
		kind = Load
	case s.Kind == model.CoolStep:
		kind = Cool
	}
	step := l.steps[s.Place]
	t := at(s.Start, kind, model.KilnStage, s.Place)
	t.Name, t.Where, t.Temperature, t.Lasts = s.Label, kilnName(stage), s.Temperature, took(s, step)
	t.Moisture, t.Weight = s.MoistureStart, before
	if step != nil {
		t.endsWith(step)
		switch heat := step.Warmth(); {
		case heat.From != nil && heat.Over != nil:
			t.Over = heat.Over.SI
		case heat.From == nil && heat.At == nil: // it takes what comes, as from a floor below
			if t.Temperature = (forecast.Temperature{}); stage.Kiln.Fed() {
				t.With = stage.Kiln.AirFrom.Name
			}
		}
	}
	if c, ok := step.(*model.Cool); ok {
		t.Water = c.Water
	}
	l.add(t)
	if step != nil && s.Kind != model.CoolStep {
		l.looks(model.KilnStage, step.Ends().Until, step.Ends().Allow, s.Start, s.End, lookKiln, nil)
		l.guarded(model.KilnStage, step.Ends().Until, s)
	}
}

// stirs lists the stirrings, from the loading until it is cooled.
func (l *lister) stirs(stage *model.Kilning, steps []forecast.Step) {
	if stage.Stir == nil {
		return
	}
	end := steps[len(steps)-1].End
	for _, s := range steps {
		if s.Kind == model.CoolStep {
			end = s.Start
			break
		}
	}
	for _, when := range every(stage.Stir.SI, stirByMachine, steps[0].Start, end) {
		l.add(at(when, Stir, model.KilnStage, stage.Stir.Place))
	}
}
