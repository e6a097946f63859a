package command

import (
	"crypto/sha256"
	"fmt"
	"strings"
	"time"

	ics "github.com/arran4/golang-ical"

	"maltwright/cmd/words"
	"maltwright/sim/visits"
)

// A calendar file is iCalendar, RFC 5545. All times in it are in UTC, so that every
// calendar shows them by the rules of its own place, before and after the change of
// the clocks. The same timetable is always the same bytes: nothing in it is taken
// from the clock of the computer, and a visit keeps its UID, so that reading a new
// timetable of a batch moves the old entries.

const (
	visitTakes  = 15 * time.Minute // as shown in the calendar
	remindsHow  = "-PT15M"
	calendarTag = "-//maltwright//visits//EN"
)

func writeVisitsCalendar(w *World, t timetable) error {
	cal := ics.NewCalendar()
	cal.SetProductId(calendarTag)
	cal.SetMethod(ics.MethodPublish)
	seen := map[string]int{}
	for i, v := range t.visits {
		t.event(cal, i, v, seen)
	}
	return cal.SerializeTo(w.Out, ics.WithNewLine("\r\n"))
}

// event writes one visit.
func (t timetable) event(cal *ics.Calendar, i int, v visits.Visit, seen map[string]int) {
	first := v.Tasks[0]
	key := fmt.Sprintf("%s|%s|%s", first.Stage, first.Kind, first.Name)
	seen[key]++
	when := clockAt(t.start, v.At)
	e := cal.AddEvent(uid(t.f.Process.Name, stamp(t.start.UTC()), key, fmt.Sprint(seen[key])))
	e.SetDtStampTime(t.start)
	e.SetStartAt(when)
	e.SetEndAt(when.Add(visitTakes))
	var words []string
	for _, k := range v.Tasks {
		words = append(words, t.say(k))
	}
	e.SetSummary(strings.Join(words, "; "))
	e.SetDescription(strings.Join(append(words, t.more(i, v)...), "\n"))
	e.AddCategory(string(first.Stage))
	a := e.AddAlarm()
	a.SetAction(ics.ActionDisplay)
	a.SetTrigger(remindsHow)
	a.SetDescription(strings.Join(words, "; "))
}

// more is what else a description holds: figures, the night, the batch.
func (t timetable) more(i int, v visits.Visit) []string {
	var out []string
	moisture, weight := figures(v)
	if moisture != nil {
		out = append(out, fmt.Sprintf("moisture by the forecast %.1f %%", *moisture))
	}
	if weight != nil {
		out = append(out, "the whole batch weighs "+(&sheet{pounds: t.pounds}).mass(*weight))
	}
	if t.mark(i) != "" {
		out = append(out, "nobody is awake then")
	}
	return append(out, words.Safe(t.f.Process.Name)+", "+elapsed(v.At)+" after the first soak")
}

// uid makes a UUID of version 8 (RFC 9562) from what tells a visit from all others.
func uid(parts ...string) string {
	h := sha256.Sum256([]byte(strings.Join(parts, "\x00")))
	h[6], h[8] = h[6]&0x0f|0x80, h[8]&0x3f|0x80
	return fmt.Sprintf("%x-%x-%x-%x-%x", h[:4], h[4:6], h[6:8], h[8:10], h[10:16])
}
