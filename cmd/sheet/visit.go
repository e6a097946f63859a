package sheet

import (
	"math"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

const (
	onDay   = "Mon 2 Jan"
	onClock = "15:04"
)

// visit is a visit with its boxes.
func (m *maker) visit(v timetable.Visit) Visit {
	out := Visit{When: m.when(v), Expect: m.expect(v), Boxes: m.boxes(v)}
	for _, t := range v.Tasks {
		out.Do = append(out.Do, short(m.h.Say(t.Words)))
	}
	return out
}

func (m *maker) when(v timetable.Visit) When {
	w := When{After: "start"}
	if v.At > 0 {
		w.After = "after " + words.After(v.At)
	}
	if !m.clock {
		return w
	}
	w.Day, w.Clock = v.Time.Format(onDay), v.Time.Format(onClock)
	switch {
	case v.Night == nil:
	case *v.Night && v.Away:
		w.Mark = "away"
	case *v.Night:
		w.Mark = "night"
	}
	return w
}

// expect says what scale and thermometer should show, and how it is noted.
func (m *maker) expect(v timetable.Visit) (list []string) {
	if known(v.Weight) {
		list = append(list, "expect "+words.OnScale(m.h, v.Weight, v.OnScale)+moist(v.Moisture))
	} else if known(v.Moisture) {
		list = append(list, "expect"+strings.TrimPrefix(moist(v.Moisture), ","))
	}
	if set := m.held(v); set != "" {
		list = append(list, "held: "+set)
	}
	if line := m.noted(v); line != "" {
		list = append(list, "note "+line)
	}
	if v.Hands != nil && v.Short {
		list = append(list, words.Hands(*v.Hands, true))
	}
	for i, e := range list {
		list[i] = short(words.Safe(e))
	}
	return list
}

// held is the temperature that is held at a visit which sets none, "" where none is.
func (m *maker) held(v timetable.Visit) string {
	for _, t := range v.Tasks {
		if t.Kind != visits.Turn && t.Kind != visits.Look && t.Kind != visits.Sprinkle && t.Kind != visits.Stir {
			return ""
		}
	}
	for _, s := range m.f.Stages[m.stageOf(v)].Steps {
		if at := float64(v.At); s.Start < at && at <= s.End && s.Temperature.Known {
			return m.h.Setting(outlook.TemperatureOf(s.Temperature))
		}
	}
	return ""
}

func known[T ~float64](x T) bool { return !math.IsNaN(float64(x)) }

func moist(w answer.Share) string {
	if !known(w) {
		return ""
	}
	return ", " + words.Percent(w) + " moisture"
}

// blank is an empty place in a line to type.
const blank = "____"

// noted is the line of the record that a weighing becomes, with an empty place for the weight.
func (m *maker) noted(v timetable.Visit) string {
	if !m.weighs(v) {
		return ""
	}
	after := ""
	if step := m.ended(v); step != "" {
		after = " after " + step
	}
	line := "weighed " + blank
	switch {
	case v.Tasks[len(v.Tasks)-1].Kind == visits.Put:
		return line + " clean malt"
	case v.Bag != nil:
		return "weighed bag " + blank + after
	case v.Gross != nil:
		return line + " " + words.Holding(v.Gross.In) + after
	}
	return line + after
}

// ended is the step that a weight at a visit is of, as a record names it; "" where there is none.
func (m *maker) ended(v timetable.Visit) (label string) {
	for _, st := range m.f.Stages {
		for _, s := range st.Steps {
			if math.Abs(s.End-float64(v.At)) > 60 || s.Kind == model.RestStep || s.Kind == model.GateStep || s.Label == forecast.Waiting || s.EndedBy == forecast.BrokenOff {
				continue
			}
			if label == "" || st.Kind == model.KilnStage {
				label = s.Label
			}
		}
	}
	return label
}
