package command

import (
	"fmt"
	"math"
	"strings"
	"time"

	"github.com/rivo/uniseg"

	"maltwright/check/report"
	"maltwright/sim/visits"
)

const (
	atNight  = "night" // nobody is awake, and it cannot wait
	itWaits  = "~"     // nobody is awake, and it may wait, or be done an hour early or late
	dayShown = "Monday 2 January 2006"
	minute   = "Monday 2 January 2006, 15:04"
)

// writeVisitsText writes the visits under the days they fall on, then when the malt
// is ready and which hour to begin at is the best. It fits 80 columns.
func writeVisitsText(w *World, t timetable) error {
	p := sheet{World: w, start: &t.start, pounds: t.pounds, fahrenheit: t.fh}
	p.head(t.f)
	p.line("%s", p.bold("  time         elapsed     wet    scale  what to do"))
	shown := ""
	for i, v := range t.visits {
		when := clockAt(t.start, v.At)
		if d := when.Format(dayShown); d != shown {
			p.line("%s", p.bold(d))
			shown = d
		}
		p.visit(t, i, when)
	}
	p.line("")
	p.gates(t.f)
	p.finish(t)
	p.night(t)
	_, err := fmt.Fprint(w.Out, p.b.String())
	return err
}

// visit writes one visit, the words in as many lines as they need.
func (p *sheet) visit(t timetable, i int, when time.Time) {
	v := t.visits[i]
	moist, scale := "", ""
	if !math.IsNaN(v.Moisture) {
		moist = fmt.Sprintf("%.1f %%", 100*v.Moisture)
	}
	if !math.IsNaN(v.Weight) {
		scale = p.mass(v.Weight)
	}
	left := fmt.Sprintf("  %s %-5s %9s  %6s %8s  ", when.Format("15:04"), t.mark(i), elapsed(v.At), moist, scale)
	for _, task := range v.Tasks {
		for j, line := range report.Wrap(t.say(task), p.width()-len(left)-2) {
			if j > 0 {
				line = "  " + line
			}
			p.line("%s", strings.TrimRight(left+line, " "))
			left = strings.Repeat(" ", uniseg.StringWidth(left))
		}
	}
}

func (t timetable) mark(i int) string {
	switch {
	case t.night == nil:
		return ""
	case t.night.marked[i]:
		return atNight
	case t.night.unhurried[i]:
		return itWaits
	}
	return ""
}

// finish says when the malt is ready, and whether it has had its rest then.
func (p *sheet) finish(t timetable) {
	p.para("visits", "%d", len(t.visits))
	p.para("ready", "%s%s", t.ready.Format(minute), t.readyBy())
	if t.rested.IsZero() {
		return
	}
	early := t.start.Add(t.ready.Sub(t.rested))
	p.para("rested", "not before %s; to have rested malt on %s, begin on %s",
		t.rested.Format(minute), t.ready.Format(dayShown), early.Format(minute))
}

func (t timetable) readyBy() string {
	if t.back {
		return ", as asked: begin on " + t.start.Format(minute)
	}
	return ""
}

// night says how many visits fall in the night, and which hour to begin at is better.
func (p *sheet) night(t timetable) {
	n := t.night
	if n == nil {
		p.para("night", "not known: the site does not say when somebody is awake, such as awake 06:30 to 22:30")
		return
	}
	p.para("night", "%d, begun at %s; %s", n.given, t.start.Format("15:04"), t.better())
	if n.given > 0 {
		p.para("", "night: nobody is awake within an hour of it")
	}
	for i := range t.visits {
		if t.mark(i) == itWaits {
			p.para("", "~: nobody is awake, but an hour early or late does no harm, or it may wait")
			return
		}
	}
}

func (t timetable) better() string {
	n := t.night
	if n.best == n.given {
		return "no other hour of that day is better"
	}
	return fmt.Sprintf("at best %d, begun at %s and ready on %s; at worst %d, begun at %s",
		n.best, n.bestAt.Format("15:04"), n.bestReady.Format(minute), n.worst, n.worstAt.Format("15:04"))
}

// figures gives moisture in per cent and weight in kg, or nil.
func figures(v visits.Visit) (moisture, weight *float64) {
	return known(percent(v.Moisture)), known(rounded(v.Weight, 3))
}
