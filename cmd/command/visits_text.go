package command

import (
	"fmt"
	"math"
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/words"
	"maltwright/lang/model"
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
	for i := 0; i < len(t.visits); {
		if d := t.day(i); d != shown {
			p.line("%s", p.bold(d))
			shown = d
		}
		n := t.alike(i)
		p.visit(t, i, n)
		i += n
	}
	p.line("")
	p.gates(t.f)
	p.finish(t)
	p.night(t)
	_, err := fmt.Fprint(w.Out, p.b.String())
	return err
}

func (t timetable) day(i int) string { return clockAt(t.start, t.visits[i].At).Format(dayShown) }

// manyAlike is from how many on visits that only repeat the one before are one line.
const manyAlike = 4

// alike is how many visits from here on one line may stand for: turns or stirrings of
// one day at even intervals, all of them in the night or none.
func (t timetable) alike(i int) int {
	first := t.visits[i].Tasks
	if len(first) > 1 || first[0].Event == "" || first[0].Stage == model.SteepStage {
		return 1
	}
	n := 1
	for ; i+n < len(t.visits); n++ {
		next := t.visits[i+n].Tasks
		if len(next) > 1 || next[0].Kind != first[0].Kind || t.mark(i+n) != t.mark(i) || t.day(i+n) != t.day(i) {
			break
		}
		if gap := t.visits[i+1].At - t.visits[i].At; math.Abs(t.visits[i+n].At-t.visits[i+n-1].At-gap) > 1 {
			break
		}
	}
	if n < manyAlike {
		return 1
	}
	return n
}

// visit writes one visit, or one line for several that are alike, the words in as
// many lines as they need.
func (p *sheet) visit(t timetable, i, alike int) {
	v := t.visits[i]
	moist, scale := "", ""
	if !math.IsNaN(v.Moisture) {
		moist = fmt.Sprintf("%.1f %%", 100*v.Moisture)
	}
	if !math.IsNaN(v.Weight) {
		scale = p.mass(v.Weight)
	}
	left := fmt.Sprintf("  %s %-5s %9s  %6s %8s  ", clockAt(t.start, v.At).Format("15:04"), t.mark(i), elapsed(v.At), moist, scale)
	for _, task := range v.Tasks {
		say := t.say(task)
		if alike > 1 {
			last := t.visits[i+alike-1].At
			say += fmt.Sprintf(" every %s until %s, %d times", span(t.visits[i+1].At-v.At), clockAt(t.start, last).Format("15:04"), alike)
		}
		for j, line := range words.Wrap(say, p.width()-len(left)-2) {
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
		p.para("rested", "the process asks for no rest in store")
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
		return "no other half hour to begin at is better"
	}
	return fmt.Sprintf("at best %d, begun on %s and ready on %s; at worst %d, begun at %s",
		n.best, n.bestAt.Format(minute), n.bestReady.Format(minute), n.worst, n.worstAt.Format("15:04"))
}
