package sheet

import (
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/infer/follow"
	"maltwright/sim/visits"
)

// late are the rows of what should have been done by now and is not in the record: they come first.
func (m *maker) late() (list []Visit) {
	if m.batch == nil {
		return nil
	}
	list = m.unrecorded()
	if m.o.Follow == nil {
		return list
	}
	for _, l := range m.o.Follow.Late {
		at := outlook.ClockAt(m.o.Start, answer.Seconds(l.Since))
		do := words.Late(l.Kind, m.ago(at), words.Safe(words.OneLine(l.Text)))
		boxes := []Box{{Label: "holds: yes / not yet"}, {Label: "time"}}
		var notes []string
		switch l.Kind {
		case follow.LateTurn:
			do += ": turn it, and note it"
			boxes[0] = Box{Label: vocabulary.PlaceBed, Unit: m.h.Degree()}
			notes = []string{"note turned", "note read bed " + blank}
		case follow.LateCool:
			boxes[0] = Box{Label: vocabulary.PlaceMalt, Unit: m.h.Degree()}
		}
		list = append(list, Visit{When: m.lateSince(at), Do: []string{short("late: " + do)}, Expect: notes, Boxes: boxes, Beside: true})
	}
	return list
}

func (m *maker) lateSince(at time.Time) When {
	return When{Day: at.Format(onDay), Clock: at.Format(onClock), After: "was due", Mark: isLate}
}

// ago is a time that is past, and how long it is.
func (m *maker) ago(at time.Time) string {
	return at.Format(onDay+" "+onClock) + ", " + words.Ago(answer.Seconds(m.until.Sub(at).Seconds())) + " ago"
}

// mostLate is how many visits that are not in the record are told.
const mostLate = 3

// isLate marks what should have been done by now.
const isLate = "late"

// Late are the rows of a sheet that should have been done by now, in words.
func (s Sheet) Late() (list []string) {
	for _, p := range s.Pages {
		for _, b := range p.Blocks {
			if v, is := b.(Visit); is && v.When.Mark == isLate {
				list = append(list, v.Do...)
			}
		}
	}
	return list
}

// unrecorded are the soaks whose end is past, and that no later weight or turn of the record tells of:
// the forecast takes them as drained in time, and they may lie under water still. Without readings there
// is nothing that tells of a turn but this.
func (m *maker) unrecorded() (list []Visit) {
	const justNow = 60 // s
	told := m.told()
	turned := m.o.Follow != nil
	for _, v := range visits.Gather(visits.List(m.f)) {
		due := timetable.VisitOf(v, m.o.Start, outlook.BagOfBatch(m.batch))
		if v.At >= m.until.Sub(m.o.Start).Seconds()-justNow || v.At <= told || len(list) == mostLate {
			continue
		}
		p := part{Visit: due}
		p.Tasks = nil
		for _, t := range due.Tasks {
			if t.Kind == visits.Drain || t.Kind == visits.Turn && !turned {
				p.Tasks = append(p.Tasks, t)
				turned = turned || t.Kind == visits.Turn
			}
		}
		if len(p.Tasks) == 0 {
			continue
		}
		p.stage = m.stageOf(p.Visit)
		row := m.visit(p)
		row.Beside, row.When = true, m.lateSince(due.Time)
		row.Do[0] = "late, and not in the record: " + row.Do[0] + ". It was due " + m.ago(due.Time) + ": do it now, or note when it was done"
		list = append(list, row)
	}
	return list
}

// told is until when the record tells what was done, s from the first soak: by a weight or a turn, which
// may be an hour before it was due.
func (m *maker) told() float64 {
	last := m.batch.Began.Time
	for _, x := range m.batch.Readings {
		switch x.(type) {
		case *model.Weighed, *model.Turned:
			if at := x.When().Time; at.After(last) && !at.After(m.until) {
				last = at
			}
		}
	}
	if last.Equal(m.batch.Began.Time) {
		return 0
	}
	return last.Sub(m.batch.Began.Time).Seconds() + visits.Patience
}
