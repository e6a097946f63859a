package command

import (
	"fmt"
	"math"
	"strings"
	"time"

	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

// Visits writes the timetable of a batch.
type Visits struct {
	File    string `arg:"" help:"A process file; - is standard input."`
	Process string `help:"Which process, where the file holds several." placeholder:"NAME"`
	Start   string `help:"When the first soak begins, such as 2026-03-06T07:00." placeholder:"TIME"`
	Ready   string `help:"When the malt is to be ready, its rootlets off; reckons back to the first soak." placeholder:"TIME"`
	Format  string `enum:"text,json,ics" default:"text" help:"How to write: text, json, or ics for a calendar."`
	Root    string `help:"Folder outside of which use reads nothing; by default the folder of the file." placeholder:"FOLDER"`
}

// Help is the longer help of the command.
func (Visits) Help() string {
	return `Every time somebody has to go to the batch, from the first filling to the end of
the rest in store: what to do, how moist the grain should be and what the whole
batch should weigh, and which visits fall in the night, when by its site nobody is
awake. Then the hour of that day to begin at, so that the fewest do.

Times are those of the computer's time zone, over the change of the clocks too; a
time may name its own offset, as in 2026-03-06T07:00+01:00. A calendar reads the
file that --format ics makes, and reminds a quarter of an hour before.

Examples:

  maltwright visits pale.malt --start 2026-03-06T07:00
  maltwright visits pale.malt --ready 2026-03-14T12:00
  maltwright visits pale.malt --start 2026-03-06T07:00 --format ics > pale.ics

Exit code: 0 the timetable was made, 1 the process must be put right first, or
the forecast broke off, 2 the command line cannot be understood, 3 the file cannot
be read.`
}

// Run forecasts and writes the timetable.
func (c Visits) Run(w *World) error {
	when, err := c.when()
	if err != nil {
		return err
	}
	f, err := Forecast{File: c.File, Process: c.Process, Root: c.Root}.made(w, "visits")
	if err != nil {
		return err
	}
	if f.BrokenOff() {
		return failure{ExitFindings, fmt.Errorf("%s: no timetable, for the forecast breaks off; maltwright forecast says where", c.File)}
	}
	t := newTimetable(f, when, c.Ready != "")
	if len(t.visits) == 0 {
		return failure{ExitFindings, fmt.Errorf("%s: no timetable, for %q has no steps", c.File, f.Process.Name)}
	}
	if last := t.visits[len(t.visits)-1]; last.At > longestBatch {
		return failure{ExitFindings, fmt.Errorf("%s: no timetable, for the batch takes %.0f years, its rest in store with it; a timetable goes to %.0f",
			c.File, last.At/year, longestBatch/year)}
	}
	if err := visitsWriters[c.Format](w, t); err != nil {
		return failed("cannot write: %v", err)
	}
	return nil
}

var visitsWriters = map[string]func(*World, timetable) error{
	"text": writeVisitsText, "json": writeVisitsJSON, "ics": writeVisitsCalendar,
}

// when is the time given with either flag.
func (c Visits) when() (time.Time, error) {
	switch {
	case c.Start == "" && c.Ready == "":
		return time.Time{}, usage("visits needs the time of the first soak, --start 2026-03-06T07:00, or that at which the malt is to be ready, --ready 2026-03-14T12:00")
	case c.Start != "" && c.Ready != "":
		return time.Time{}, usage("--start and --ready stand together; one follows from the other, so give one")
	case c.Start != "":
		return shownTime("--start", c.Start)
	}
	return shownTime("--ready", c.Ready)
}

// The years that a timetable may lie in: those of which the rules of clocks tell, and
// for which every format has a way to write.
const firstYear, lastYear = 1900, 2999

// longestBatch is as far as a timetable goes: no malt is kept longer, and so no date
// is ever beyond what the calendar can name, s.
const (
	year         = 365.25 * 86400
	longestBatch = 10 * year
)

// shownTime reads a time that a clock shows once: not one that is left out when the
// clocks are put forward, nor, without its offset, one that comes again when they are
// put back.
func shownTime(flag, text string) (time.Time, error) {
	for _, layout := range startLayouts {
		t, err := time.ParseInLocation(layout, text, time.Local)
		if err != nil {
			continue
		}
		if t.Year() < firstYear || t.Year() > lastYear {
			return t, usage("%s %q: the year must lie in %d to %d", flag, text, firstYear, lastYear)
		}
		if strings.HasSuffix(layout, "Z07:00") {
			return t, nil
		}
		return t, onceShown(t, layout, flag, text)
	}
	return time.Time{}, usage("%s %q is no time; write it as 2026-03-06T07:00", flag, text)
}

func onceShown(t time.Time, layout, flag, text string) error {
	if t.Format(layout) != text {
		return usage("%s %q: the clocks are put forward then, and none shows this time", flag, text)
	}
	for _, shift := range []time.Duration{-2 * time.Hour, -time.Hour, -30 * time.Minute, 30 * time.Minute, time.Hour, 2 * time.Hour} {
		if t.Add(shift).Format(layout) == text {
			return usage("%s %q: the clocks are put back then, and this time comes twice; name its offset, such as %s", flag, text, t.Format("2006-01-02T15:04Z07:00"))
		}
	}
	return nil
}

// timetable is what is written: the visits of a forecast that begins at a time.
type timetable struct {
	f          *forecast.Forecast
	start      time.Time
	ready      time.Time // rootlets off, or the end of a process without a kiln
	back       bool      // reckoned back from ready
	rested     time.Time // zero where there is no rest in store
	visits     []visits.Visit
	night      *nights // nil where the site does not say when somebody is awake
	clock      visits.Clock
	pounds, fh bool
}

// nights is how many visits fall in the night, by the hour at which the batch begins.
type nights struct {
	given             int
	best, worst       int
	bestAt, worstAt   time.Time
	bestReady         time.Time
	marked, unhurried map[int]bool // by the index of the visit: in the night; asleep, and it may wait
}

func newTimetable(f *forecast.Forecast, when time.Time, back bool) timetable {
	took := time.Duration(math.Round(f.Totals.Total)) * time.Second
	t := timetable{f: f, start: when, back: back, visits: visits.Gather(visits.List(f))}
	if back {
		t.start = when.Add(-took)
	}
	t.ready, t.clock = t.start.Add(took), visits.From(t.start)
	t.pounds, t.fh = shownIn(f.Process)
	for _, v := range t.visits {
		for _, task := range v.Tasks {
			if task.Kind == visits.Rested {
				t.rested = clockAt(t.start, task.At)
			}
		}
	}
	if s := f.Process.Site; s != nil && s.Awake != nil {
		t.nights()
	}
	return t
}

// nights marks the visits and seeks the best hour of the day to begin at.
func (t *timetable) nights() {
	awake := *t.f.Process.Site.Awake
	n := &nights{marked: map[int]bool{}, unhurried: map[int]bool{}}
	for i, v := range t.visits {
		night := t.clock.Night(awake, v.At, v.Waits)
		n.marked[i], n.unhurried[i] = night, !night && !t.clock.Awake(awake, v.At)
	}
	n.given = len(visits.Missed(t.visits, t.clock, awake))
	best, worst := visits.Best(t.visits, awake, func(second int) visits.Clock { return visits.From(t.begunAt(second)) })
	n.best, n.bestAt = len(best.Missed), t.begunAt(best.At)
	n.worst, n.worstAt = len(worst.Missed), t.begunAt(worst.At)
	if n.given <= n.best { // no half hour is better than the time given
		n.best, n.bestAt = n.given, t.start
	}
	n.bestReady = n.bestAt.Add(t.ready.Sub(t.start))
	t.night = n
}

// begunAt is when the first soak begins at another second of the day: on the same
// day, or on the one before where the malt would come too late for the time asked.
func (t *timetable) begunAt(second int) time.Time {
	at := visits.On(t.start, second)
	if t.back && at.After(t.start) {
		return visits.On(t.start.AddDate(0, 0, -1), second)
	}
	return at
}
