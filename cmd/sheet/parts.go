package sheet

import (
	"math"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/timetable"
	"maltwright/lang/model"
	"maltwright/sim/visits"
)

// part is what of a visit stands on the page of a stage: whoever spreads or loads has that page at
// hand, with the settings that hold from then on.
type part struct {
	timetable.Visit
	stage int
	then  string // the page that goes on with the same visit; "" for none
}

// begins are the tasks with which the page of a stage begins.
var begins = map[visits.Kind]bool{visits.Spread: true, visits.Load: true, visits.Change: true, visits.Deculm: true}

// parts are the visits, each cut where a stage begins. The weight is that of the first part.
func (m *maker) parts() (list []part) {
	for _, v := range m.visits {
		from := 0
		for i := 1; i <= len(v.Tasks); i++ {
			if i < len(v.Tasks) && !startsPart(v.Tasks[i-1], v.Tasks[i]) {
				continue
			}
			p := part{Visit: v}
			p.Tasks = v.Tasks[from:i]
			if p.stage = m.stageOf(p.Visit); from > 0 {
				none := answer.Kilograms(math.NaN())
				p.Weight, p.Moisture, p.Gross, p.Bag, p.Short = none, answer.Share(math.NaN()), nil, nil, false
				list[len(list)-1].then = m.other(list[len(list)-1].stage, p.stage)
			}
			list, from = append(list, p), i
		}
	}
	return list
}

// other is the page of a stage, seen from that of another one; "" where it is the same.
func (m *maker) other(from, to int) string {
	if from == to || m.f.Stages[to].Kind == model.StoreStage {
		return ""
	}
	return m.called(to)
}

func startsPart(before, t timetable.Task) bool {
	return t.Stage != before.Stage || t.Kind == visits.Spread || t.Kind == visits.Load || t.Kind == visits.Change && before.Kind == visits.EndFloor
}
