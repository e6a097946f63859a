package forecast

import (
	"maltwright/lang/model"
	"maltwright/sim/kiln"
)

// draughts are those that dry the malt of a stage, or whatever heats it where no step is
// there to dry it.
func draughts(st *model.Kilning, kit kiln.Equipment) []kiln.Draught {
	var drying, all []kiln.Draught
	for _, s := range st.Steps {
		h := model.HeatedOf(s)
		if h == nil {
			continue
		}
		d := kiln.Draught{T: hottest(h.Warming), Airflow: kit.Airflow}
		if h.Airflow != nil {
			d.Airflow = h.Airflow.SI
		}
		if all = append(all, d); s.Kind() == model.DryStep {
			drying = append(drying, d)
		}
	}
	if len(drying) > 0 {
		return drying
	}
	return all
}

// firstHeat is the air-on of the first step that dries, or heats where none dries, as it begins, °C; 0 where none says it.
func firstHeat(st *model.Kilning) float64 {
	var first *model.Heated
	for _, s := range st.Steps {
		h := model.HeatedOf(s)
		if first == nil {
			first = h
		}
		if s.Kind() == model.DryStep {
			first = h
			break
		}
	}
	switch {
	case first == nil:
		return 0
	case first.At == nil && first.From != nil && kilnTargets[first.From.Where] == kiln.AirOn:
		low, _ := bandOf(first.From.Range.Range)
		return low
	}
	return hottest(first.Warming)
}

// throughGreen are those draughts with the air that passes the malt while it is green.
func (l *loading) throughGreen(list []kiln.Draught) []kiln.Draught {
	if l.by == "" {
		return list
	}
	for i, d := range list {
		list[i].Airflow = l.gives(d.T, d.Airflow)
	}
	return list
}

// hottest is the hottest air-on that what a step says of its warmth may bring, °C.
func hottest(w model.Warming) float64 {
	t := w.At
	if t == nil {
		t = w.From
	}
	if t == nil {
		return 0
	}
	low, high := bandOf(t.Range.Range)
	if high = max(low, high); kilnTargets[t.Where] == kiln.Malt || kilnTargets[t.Where] == kiln.AirOff {
		return high + kiln.Lead
	}
	return high
}
