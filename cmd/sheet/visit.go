package sheet

import (
	"math"
	"slices"
	"strings"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
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

// weighing are the tasks at which the batch is put onto the scale.
var weighing = map[visits.Kind]bool{visits.Drain: true, visits.EndFloor: true, visits.Gate: true, visits.Unload: true, visits.Put: true,
	visits.Heat: true, visits.Load: true, visits.Cool: true}

// weighs tells whether the batch is weighed at a visit.
func (m *maker) weighs(v timetable.Visit) bool {
	for _, t := range v.Tasks {
		if weighing[t.Kind] && (known(v.Weight) || t.Kind == visits.Drain || t.Kind == visits.Gate || t.Kind == visits.Put) {
			return v.At > 0
		}
	}
	return false
}

// boxes are those of what is weighed and read at a visit, and of its time.
func (m *maker) boxes(v timetable.Visit) []Box {
	var list []Box
	add := func(more ...Box) {
		for _, b := range more {
			if !holds(list, b.Label) {
				list = append(list, b)
			}
		}
	}
	if m.weighs(v) {
		add(m.scales(v)...)
	}
	for _, t := range v.Tasks {
		if len(list) < mostBoxes {
			add(m.boxesOf(v, t)...)
		}
	}
	if len(list) == 0 {
		list = []Box{{Label: "seen"}}
	}
	return append(list, Box{Label: "time"})
}

// mostBoxes is from how many values on no further thermometer is asked for.
const mostBoxes = 2

func holds(list []Box, label string) bool {
	for _, b := range list {
		if b.Label == label {
			return true
		}
	}
	return false
}

// scales are the boxes of what is weighed.
func (m *maker) scales(v timetable.Visit) (list []Box) {
	for _, t := range v.Tasks {
		for _, g := range t.Each {
			list = append(list, Box{Label: label(words.Holding(g.In)), Unit: m.unit(g.Weight)})
		}
	}
	unit := m.unit(v.Weight)
	switch {
	case len(list) > 0:
	case v.Gross != nil:
		list = append(list, Box{Label: label(words.Holding(v.Gross.In)), Unit: m.unit(v.Gross.Weight)})
	case v.Bag == nil && v.Tasks[len(v.Tasks)-1].Kind == visits.Put:
		list = append(list, Box{Label: "clean malt", Unit: unit})
	case v.Bag == nil:
		list = append(list, Box{Label: "weight", Unit: unit})
	}
	if v.Bag != nil {
		list = append(list, Box{Label: "marked bag", Unit: unitOf(words.Bag(m.h, *v.Bag))})
	}
	return list
}

// unit is that of a weight of the batch, of one about the charge where it is not known. One that comes
// out even, 10 lb, is weighed in lb and oz all the same.
func (m *maker) unit(kg answer.Kilograms) string {
	if !known(kg) && m.p.Charge != nil {
		kg = answer.Kilograms(m.p.Charge.SI)
	}
	const odd = 1.0073
	return unitOf(words.Weighed(m.h, kg*odd))
}

// label is what stands above a box, which has room for a word or three.
func label(text string) string {
	const most = 22
	if r := []rune(text); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return text
}

// unitOf is the unit of a weight as it is written: kg of 8.33 kg, lb oz of 14 lb 9.5 oz.
func unitOf(text string) string {
	var units []string
	for _, word := range strings.Fields(text) {
		if strings.Trim(word, "0123456789.,-−–—") != "" {
			units = append(units, word)
		}
	}
	return strings.Join(units, " ")
}

// boxesOf are those of a task beside the weight.
func (m *maker) boxesOf(v timetable.Visit, t timetable.Task) []Box {
	degrees := func(place string) []Box { return []Box{{Label: place, Unit: m.h.Degree()}} }
	switch t.Kind {
	case visits.Fill:
		return degrees(vocabulary.PlaceWater)
	case visits.Turn, visits.Change, visits.Sprinkle:
		return degrees(vocabulary.PlaceBed)
	case visits.Look:
		return m.looked(v, t)
	case visits.Heat, visits.Load:
		if t.Temperature != nil {
			return degrees(t.Temperature.Place)
		}
	case visits.Stir:
		return degrees(vocabulary.PlaceAirOff)
	case visits.Unload, visits.Cool:
		return degrees(vocabulary.PlaceMalt)
	}
	return nil
}

// looked are the boxes of a look: whether it holds and, on the kiln, what tells it.
func (m *maker) looked(v timetable.Visit, t timetable.Task) (list []Box) {
	list = append(list, Box{Label: "holds: yes / not yet"})
	if t.Stage != model.GerminateStage && strings.Contains(t.Until, vocabulary.MeasureMoisture) {
		if h := model.HolderOf(m.f.Stages[m.stageOf(v)].Of); h != nil && h.Weighs != nil {
			list = append(list, Box{Label: label(words.Holding(h.Name)), Unit: m.unit(v.Weight)})
		} else {
			list = append(list, Box{Label: "weight", Unit: m.unit(v.Weight)})
		}
	}
	if t.Stage == model.KilnStage && (strings.Contains(t.Until, vocabulary.MeasureBreak) || strings.Contains(t.Until, vocabulary.MeasureAirOff)) {
		list = append(list, Box{Label: vocabulary.PlaceAirOff, Unit: m.h.Degree()})
	}
	return list
}

// readIn are the readings of a stage so far, above what is yet to come of it.
func (m *maker) readIn(i int) []Block {
	if m.batch == nil || i != m.present() {
		return nil
	}
	if rows := append(m.changes(), m.readings(func(at time.Time) bool { return m.stageAt(at) == i })...); len(rows) > 0 {
		return []Block{Readings{rows}}
	}
	return nil
}

// soFar is the section of what was read in the stages that are over; nil where nothing was.
func (m *maker) soFar() *section {
	if m.batch == nil {
		return nil
	}
	rows := m.readings(func(at time.Time) bool { return m.stageAt(at) != m.present() })
	if len(rows) == 0 {
		return nil
	}
	s := section{of: "read so far", first: []Block{Heading{Text: "Read so far"}}}
	const some = 8 // rows that stay together
	for len(rows) > 0 {
		n := min(some, len(rows))
		s.first, rows = append(s.first, Readings{rows[:n]}), rows[n:]
	}
	return &s
}

// present is the stage that the batch is in.
func (m *maker) present() int { return m.stageAt(m.until) }

// stageAt is the stage of the forecast at a time.
func (m *maker) stageAt(at time.Time) int {
	s := at.Sub(m.batch.Began.Time).Seconds()
	for i, st := range m.f.Stages {
		if n := len(st.Steps); n > 0 && s <= st.Steps[n-1].End+60 {
			return i
		}
	}
	return len(m.f.Stages) - 1
}

// readings are the lines of the record until now that are of some of the times, in their order. One
// that says only its step has the time of the line before it.
func (m *maker) readings(of func(time.Time) bool) (rows []Reading) {
	type line struct {
		at time.Time
		Reading
	}
	var list []line
	last := m.batch.Began.Time
	for _, x := range m.batch.Lines() {
		when := ""
		if at := x.When().Time; !at.IsZero() {
			last, when = at, at.Format(onDay+" "+onClock)
		}
		if !last.After(m.until) && of(last) {
			list = append(list, line{last, Reading{when, written(x.Place())}})
		}
	}
	slices.SortStableFunc(list, func(a, b line) int { return a.at.Compare(b.at) })
	for _, l := range list {
		rows = append(rows, l.Reading)
	}
	return rows
}

// changes are what is done otherwise than the process says, which has no time of its own.
func (m *maker) changes() (rows []Reading) {
	for _, c := range m.batch.Changes {
		rows = append(rows, Reading{Line: written(c.Place)})
	}
	return rows
}

// written is a line of a file as it is written.
func written(at source.Place) string { return short(words.Safe(words.OneLine(at.Text()))) }
