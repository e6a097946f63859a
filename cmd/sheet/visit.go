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
func (m *maker) visit(v part) Visit {
	out := Visit{When: m.when(v), Expect: m.expect(v), Boxes: m.boxes(v.Visit, v.stage)}
	for _, t := range v.Tasks {
		out.Do = append(out.Do, short(m.h.Say(t.Words)))
	}
	return out
}

func (m *maker) when(v part) When {
	w := When{After: "start"}
	if v.At > 0 {
		if w.After = words.Since(v.At); len(w.After) <= plainAfter {
			w.After = "after " + w.After
		}
	}
	if !m.clock {
		return w
	}
	w.Day, w.Clock = v.Time.Format(onDay), v.Time.Format(onClock)
	switch {
	case v.Night != nil && *v.Night && v.Away:
		w.Mark = "away"
	case v.Night != nil && *v.Night:
		w.Mark = "night"
	case v.Awake != nil && !*v.Awake: // it may be done earlier or later
		w.Mark = "asleep"
	}
	return w
}

// plainAfter is up to how many letters a time has room behind a word.
const plainAfter = 10

// expect says what scale and thermometer should show, and how it is noted.
func (m *maker) expect(v part) (list []string) {
	if known(v.Weight) {
		list = append(list, "expect "+words.OnScale(m.h, v.Weight, v.OnScale)+moist(v.Moisture))
	} else if known(v.Moisture) {
		list = append(list, "expect"+strings.TrimPrefix(moist(v.Moisture), ","))
	}
	if set := m.held(v); set != "" {
		list = append(list, "held: "+set)
	}
	if line := m.loadedFor(v); line != "" {
		list = append(list, line)
	}
	for _, line := range m.notes(v) {
		list = append(list, "note "+line)
	}
	if v.then != "" {
		list = append(list, `goes on at once on the page "`+v.then+`"`)
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
func (m *maker) held(v part) string {
	for _, t := range v.Tasks {
		if t.Kind != visits.Turn && t.Kind != visits.Look && t.Kind != visits.Sprinkle && t.Kind != visits.Stir {
			return ""
		}
	}
	s := m.stepAt(v)
	if s == nil || !s.Temperature.Known {
		return ""
	}
	for _, x := range model.EveryStep(model.StepsOf(m.f.Stages[v.stage].Of)) { // the air is blown so that the bed is held
		if at := x.Warmth().At; x.Place() == s.Place && at != nil && at.Where != "" && at.Where != s.Temperature.Place {
			return strings.TrimPrefix(words.OneLine(x.Place().Text()), "hold ")
		}
	}
	return m.h.Setting(outlook.TemperatureOf(s.Temperature))
}

// stepAt is the step of the forecast that goes on at a visit, nil where none does.
func (m *maker) stepAt(v part) *forecast.Step {
	steps := m.f.Stages[v.stage].Steps
	for i := range steps {
		if at := float64(v.At); steps[i].Start < at && at <= steps[i].End {
			return &steps[i]
		}
	}
	return nil
}

// loadedFor says at the kiln how long the malt has been on it: there a clock that was foretold days ago
// tells little.
func (m *maker) loadedFor(v part) string {
	st := m.f.Stages[v.stage]
	if st.Kind != model.KilnStage || len(st.Steps) == 0 {
		return ""
	}
	s := float64(v.At) - st.Steps[0].Start
	if s < 60 {
		return ""
	}
	return words.Since(s) + " after loading"
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

// notes are the lines of the record that a visit becomes, with empty places for the values.
func (m *maker) notes(v part) (list []string) {
	if line := m.noted(v.Visit); line != "" {
		list = append(list, line)
	}
	for _, t := range v.Tasks {
		if t.Kind == visits.Turn {
			list = append(list, "turned")
		}
	}
	for _, b := range m.boxes(v.Visit, v.stage) {
		if b.Unit == m.h.Degree() {
			list = append(list, "read "+b.Label+" "+blank)
		}
	}
	return list
}

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
