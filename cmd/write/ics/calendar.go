package ics

import (
	"io"
	"time"

	ics "github.com/arran4/golang-ical"

	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
)

// Batch is a batch under way in a calendar.
type Batch struct {
	ID      string // tells it from all others, and stays
	Name    string
	Process string
	Stamp   time.Time         // when what its visits go by was written last
	Visits  []timetable.Visit // all of them, from its beginning, so that each keeps its name
	House   words.House
}

const (
	asked   = "PT15M" // how often a program is to ask again (RFC 7986, 5.7)
	subject = "-//maltwright//batches under way//EN"
)

// Calendar writes the visits of batches as one calendar that a program asks for again and again: of
// visits that lie longer back than the time from, none. An event keeps its UID when its visit moves, so that the
// program moves it.
func Calendar(w io.Writer, name string, list []Batch, from time.Time) error {
	cal := ics.NewCalendar()
	cal.SetProductId(subject)
	cal.SetMethod(ics.MethodPublish)
	cal.SetName(name)
	cal.SetXWRCalName(name)
	cal.SetRefreshInterval(asked) // the library writes VALUE=DURATION into its name
	cal.SetXPublishedTTL(asked)
	for _, b := range list {
		b.write(cal, from)
	}
	return cal.SerializeTo(w, ics.WithNewLine("\r\n"))
}

func (b Batch) write(cal *ics.Calendar, from time.Time) {
	count := counter{}
	for _, v := range b.Visits {
		id := count.uid(v, "batch", b.ID)
		if v.Time.Before(from) {
			continue
		}
		tasks := tasksOf(v, b.House)
		of := "batch " + words.Safe(b.Name) + " of " + words.Safe(b.Process)
		add(cal, id, b.Stamp, v, words.Safe(b.Name)+": "+words.Safe(joined(tasks)), append(tasks, append(more(v, b.House), of)...))
	}
}
