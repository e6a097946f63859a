package sheet

import (
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/visits"
)

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
func (m *maker) boxes(v timetable.Visit, stage int) []Box {
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
			add(m.boxesOf(v, stage, t)...)
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
	put := v.Tasks[len(v.Tasks)-1].Kind == visits.Put
	switch {
	case len(list) > 0:
	case put:
		list = append(list, Box{Label: "clean malt", Unit: unit})
	case v.Gross != nil:
		list = append(list, Box{Label: label(words.Holding(v.Gross.In)), Unit: m.unit(v.Gross.Weight)})
	case v.Bag == nil:
		list = append(list, Box{Label: "weight", Unit: unit})
	}
	if v.Bag != nil && !put {
		list = append(list, m.bagBox())
	}
	return list
}

// bagBox is that of the marked bag.
func (m *maker) bagBox() Box {
	const odd = 1.0073 // as of a weight of the batch
	return Box{Label: "marked bag", Unit: unitOf(words.Bag(m.h, odd*m.bag().SI))}
}

// unit is that of a weight of the batch, of one about the charge where it is not known. One that comes
// out even, 10 lb, is weighed in lb and oz all the same.
func (m *maker) unit(kg answer.Kilograms) string {
	if !known(kg) && m.p.Charge != nil {
		kg = answer.Kilograms(m.p.Charge.SI)
	}
	unit := unitOf(words.Weighed(m.h, kg))
	if unit == "lb" && m.h.Ounces {
		return "lb oz"
	}
	return unit
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
func (m *maker) boxesOf(v timetable.Visit, stage int, t timetable.Task) []Box {
	degrees := func(place string) []Box { return []Box{{Label: place, Unit: m.h.Degree()}} }
	switch t.Kind {
	case visits.Spread:
		if stage := m.f.Stages[stage].Kind; stage == model.GerminateStage {
			return degrees(vocabulary.PlaceBed)
		}
		return degrees(vocabulary.PlaceAir)
	case visits.Fill:
		return degrees(vocabulary.PlaceWater)
	case visits.Turn, visits.Change, visits.Sprinkle:
		return degrees(vocabulary.PlaceBed)
	case visits.Look:
		return m.looked(v, stage, t)
	case visits.Heat, visits.Load:
		if t.Temperature != nil {
			return degrees(t.Temperature.Place)
		}
	case visits.Stir:
		return degrees(m.thermometer(v, stage))
	case visits.Gate:
		if strings.Contains(t.Until, vocabulary.MeasureChit) {
			return []Box{{Label: "chitted, of 100"}}
		}
	case visits.Unload, visits.Cool:
		return degrees(vocabulary.PlaceMalt)
	}
	return nil
}

// thermometer is that which tells something in a step of the kiln: behind the malt where air is blown
// onto it, else that by which it is heated, as of an oven.
func (m *maker) thermometer(v timetable.Visit, stage int) string {
	if s := m.stepAt(part{Visit: v, stage: stage}); s != nil && s.Temperature.Known && s.Temperature.Place != vocabulary.PlaceAirOn {
		return s.Temperature.Place
	}
	return vocabulary.PlaceAirOff
}

// looked are the boxes of a look: whether it holds and, on the kiln, what tells it.
func (m *maker) looked(v timetable.Visit, stage int, t timetable.Task) (list []Box) {
	list = append(list, Box{Label: "holds: yes / not yet"})
	if t.Stage != model.GerminateStage && strings.Contains(t.Until, vocabulary.MeasureMoisture) {
		switch h := model.HolderOf(m.f.Stages[stage].Of); {
		case h != nil && h.Weighs != nil:
			list = append(list, Box{Label: label(words.Holding(h.Name)), Unit: m.unit(v.Weight)})
		case m.bag() != nil:
			list = append(list, m.bagBox())
		default:
			list = append(list, Box{Label: "weight", Unit: m.unit(v.Weight)})
		}
	}
	if t.Stage == model.KilnStage && (strings.Contains(t.Until, vocabulary.MeasureBreak) || strings.Contains(t.Until, vocabulary.MeasureAirOff)) {
		list = append(list, Box{Label: vocabulary.PlaceAirOff, Unit: m.h.Degree()})
	}
	return list
}
