package rules

import (
	"fmt"
	"slices"
	"time"

	"maltwright/check/tell"
	"maltwright/lang/finding"
	"maltwright/sim/visits"
)

// dues is what needs a hand in the steep and on the floor, and when.
type dues struct {
	c      *Case
	on     time.Time // midnight of the day of the first soak; the zero time where it is not known
	list   []visits.Task
	byTime bool // some of it stands at the clock, and so its time goes by the start
}

func (c *Case) dues() dues {
	d := dues{c: c, list: visits.Growing(visits.List(c.Forecast))}
	d.on, _ = time.Parse(time.DateOnly, c.On)
	d.byTime = slices.ContainsFunc(d.list, func(t visits.Task) bool { return t.Wall != nil })
	return d
}

// clock is that of a task, of a batch that begins at a second of the day.
func (d dues) clock(start int, t visits.Task) visits.Clock {
	clock := visits.Daily(start)
	if !d.on.IsZero() {
		clock = visits.From(d.on.Add(time.Duration(start) * time.Second))
	}
	return visits.Shown(t, clock)
}

// anyDay stands for the day of the first soak where it is not known.
var anyDay = time.Date(2001, 1, 1, 0, 0, 0, 0, time.UTC)

// from is the list of a batch that begins at a second of the day.
func (d dues) from(start int) []visits.Task {
	if !d.byTime {
		return d.list
	}
	f, day := *d.c.Forecast, d.on
	if day.IsZero() {
		day = anyDay
	}
	f.Begun = day.Add(time.Duration(start) * time.Second)
	return visits.Growing(visits.List(&f))
}

// missed is what nobody sees to of a batch that begins at a second of the day.
func (d dues) missed(start int) (out []visits.Task) {
	for _, t := range d.from(start) {
		if d.clock(start, t).Night(d.c.Process.Site.Hours, t.At, t.Waits) {
			out = append(out, t)
		}
	}
	return out
}

// parted parts what is missed into what falls in the night, and what falls on a day when
// nobody is there.
func (d dues) parted(s visits.Start[visits.Task]) (night, away []visits.Task) {
	for _, t := range s.Missed {
		if d.clock(s.At, t).Away(d.c.Process.Site.Hours, t.At) {
			away = append(away, t)
		} else {
			night = append(night, t)
		}
	}
	return night, away
}

// nobodyThere tells of what falls on days when nobody is there: no hour of the day helps.
func (d dues) nobodyThere(r finding.Rule, start int, away []visits.Task) finding.Finding {
	first := away[0]
	at := d.clock(start, first)(first.At)
	f := r.At(first.Place, fmt.Sprintf("of %d steps that need somebody %s on days when nobody is there, the first of them %s, on %s at %s",
		len(d.list), fall(len(away)), tell.Due(first), at.Day.Format(time.DateOnly), clock(at.Second)))
	f.Why = "a soak that nobody drains drowns the grain, and a piece that is not turned heats and mats, for as long as nobody comes (common practice)"
	f.Hint = "ask somebody to come on those days, or begin on another day" + localCodes
	if day, found := d.dayWithoutAway(start); found {
		f.Hint = fmt.Sprintf("begin on %s, when none of them falls on such a day, or ask somebody to come on those days%s", day.Format(time.DateOnly), localCodes)
	}
	return f
}

// farthest is how many days ahead a better day is sought.
const farthest = 60

// dayWithoutAway is the first day on which a batch may begin that needs nobody while nobody
// is there.
func (d dues) dayWithoutAway(start int) (time.Time, bool) {
	list := d.from(start)
	for range farthest {
		d.on = d.on.AddDate(0, 0, 1)
		if !slices.ContainsFunc(list, func(t visits.Task) bool {
			clock := d.clock(start, t)
			return clock.Away(d.c.Process.Site.Hours, t.At) && clock.Night(d.c.Process.Site.Hours, t.At, t.Waits)
		}) {
			return d.on, true
		}
	}
	return time.Time{}, false
}
