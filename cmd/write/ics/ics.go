// Package ics writes a timetable for a calendar: iCalendar, RFC 5545.
//
// All times in it are in UTC, so that every calendar shows them by the rules of its own
// place, before and after the change of the clocks. The same timetable is always the same
// bytes: nothing in it is taken from the clock of the computer, and a visit keeps its UID,
// so that reading a new timetable of a batch moves the old entries.
package ics

import (
	"crypto/sha256"
	"fmt"
	"io"
	"math"
	"strings"
	"time"

	ics "github.com/arran4/golang-ical"

	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
)

const (
	visitTakes = 15 * time.Minute // as shown in the calendar
	remindsHow = "-PT15M"
	product    = "-//maltwright//visits//EN"
)

// Write writes an event for each visit.
func Write(w io.Writer, r timetable.Result, h words.House) error {
	cal := ics.NewCalendar()
	cal.SetProductId(product)
	cal.SetMethod(ics.MethodPublish)
	count := counter{}
	for i, v := range r.Visits {
		event(cal, count.uid(v, r.Process, r.Start.UTC().Format(time.RFC3339)), r, v, i == len(r.Visits)-1, h)
	}
	return cal.SerializeTo(w, ics.WithNewLine("\r\n"))
}

// event writes one visit; the last one says where what comes of it is no malt.
func event(cal *ics.Calendar, id string, r timetable.Result, v timetable.Visit, last bool, h words.House) {
	tasks := tasksOf(v, h)
	if last && r.NoMalt != nil {
		tasks = append(tasks, "no malt: "+words.NoMalt(*r.NoMalt, r.Green))
	}
	of := words.Safe(r.Process) + ", " + words.After(v.At) + " after " + words.Beginning(r.Green)
	add(cal, id, r.Start, v, joined(tasks), append(tasks, append(more(v, h), of)...))
}

func joined(tasks []string) string { return strings.Join(tasks, "; ") }

func tasksOf(v timetable.Visit, h words.House) (list []string) {
	for _, t := range v.Tasks {
		list = append(list, h.Say(t.Words))
	}
	return list
}

// add adds an event with its reminder. Stamp is when what it goes by was written last.
func add(cal *ics.Calendar, id string, stamp time.Time, v timetable.Visit, summary string, description []string) {
	e := cal.AddEvent(id)
	e.SetDtStampTime(stamp)
	e.SetStartAt(v.Time)
	e.SetEndAt(v.Time.Add(visitTakes))
	e.SetSummary(summary)
	e.SetDescription(strings.Join(description, "\n"))
	e.AddCategory(string(v.Tasks[0].Stage))
	a := e.AddAlarm()
	a.SetAction(ics.ActionDisplay)
	a.SetTrigger(remindsHow)
	a.SetDescription(summary)
}

// more is what else a description holds: figures, the night, the hands.
func more(v timetable.Visit, h words.House) []string {
	var out []string
	if !math.IsNaN(float64(v.Moisture)) {
		out = append(out, "moisture by the forecast "+words.Percent(v.Moisture))
	}
	if !math.IsNaN(float64(v.Weight)) {
		out = append(out, "the whole batch weighs "+words.OnScale(h, v.Weight, v.OnScale))
	}
	switch {
	case v.Away:
		out = append(out, "nobody works on that day")
	case v.Awake != nil && !*v.Awake:
		out = append(out, "nobody is awake then")
	}
	if v.Hands != nil {
		out = append(out, words.Hands(*v.Hands, v.Short))
	}
	return out
}

// counter counts visits of a kind, so that each has a name that it keeps when it moves.
type counter map[string]int

// uid names the next visit of a kind; of is what tells its batch from all others.
func (c counter) uid(v timetable.Visit, of ...string) string {
	first := v.Tasks[0]
	key := fmt.Sprintf("%s|%s|%s", first.Stage, first.Kind, first.Name)
	c[key]++
	return uid(append(of, key, fmt.Sprint(c[key]))...)
}

// uid makes a UUID of version 8 (RFC 9562) from what tells a visit from all others.
func uid(parts ...string) string {
	h := sha256.Sum256([]byte(strings.Join(parts, "\x00")))
	h[6], h[8] = h[6]&0x0f|0x80, h[8]&0x3f|0x80
	return fmt.Sprintf("%x-%x-%x-%x-%x", h[:4], h[4:6], h[6:8], h[8:10], h[10:16])
}
