package rules

import (
	"cmp"
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/process"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
)

var visitAtNight = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "visit-at-night", Severity: finding.Note,
		Title: "a step that needs a hand falls due when nobody is awake, whenever the steep begins",
		Why:   "a soak that is drained when somebody wakes up lasts hours longer than was meant, and a piece that is not turned heats (common practice)",
		Do:    "shift the lengths of soaks and rests so that each pair makes up 8, 12 or 24 h, or turn at longer intervals in a cooler room" + localCodes,
		Bad:   "turn every 3 h",
		Good:  "turn every 8 h",
		Limits: "it looks at the steep and at the turns of the growing piece, an hour early or late being no harm; " +
			"not at the kiln, which is lit when somebody chooses to"},
	Judge: func(r finding.Rule, c *Case) {
		if c.Process.Site == nil || c.Process.Site.Awake == nil {
			c.NotJudged(r, "the site does not say when somebody is awake")
			return
		}
		list := c.visits()
		if len(list) == 0 {
			return
		}
		best, worst := bestStart(list, *c.Process.Site.Awake)
		if len(best.missed) == 0 {
			return
		}
		f := r.At(best.missed[0].place, fmt.Sprintf("of %d steps that need a hand at least %s due when nobody is awake, the first of them %s, at %s",
			len(list), fall(len(best.missed)), best.missed[0].what, clock(best.at+int(best.missed[0].at))))
		f.Hint = fmt.Sprintf("begin the first soak at %s, which leaves %d of them; at %s it would be %d; %s",
			clock(best.at), len(best.missed), clock(worst.at), len(worst.missed), r.Do)
		c.Note(f)
	},
}

// NightVisits is how many steps of the steep and of the growing piece fall due when
// nobody is awake, at the start hour that misses the fewest. It is false where the
// site does not say when somebody is awake, or nothing needs a hand.
func NightVisits(p *process.Process, f *forecast.Forecast) (int, bool) {
	c := &Case{Process: p, Forecast: f}
	if p.Site == nil || p.Site.Awake == nil {
		return 0, false
	}
	list := c.visits()
	if len(list) == 0 {
		return 0, false
	}
	best, _ := bestStart(list, *p.Site.Awake)
	return len(best.missed), true
}

func fall(n int) string {
	if n == 1 {
		return "one falls"
	}
	return fmt.Sprintf("%d fall", n)
}

// patience is how much earlier or later than it is due a step may be done, s
// (common practice).
const patience = hour

// visit is a step that needs a hand, so many seconds after the first soak.
type visit struct {
	at    float64
	what  string
	place source.Place
}

// visits lists what needs a hand from the first soak to the end of germination.
func (c *Case) visits() []visit {
	var list []visit
	for _, st := range c.Forecast.Stages {
		if len(st.Steps) == 0 {
			continue
		}
		switch st.Kind {
		case process.Steep:
			for _, s := range st.Steps {
				list = append(list, visit{s.End, "the end of " + s.Label, s.Place})
			}
		case process.Germinate:
			list = append(list, c.turns(st.Steps[0].Start, st.Steps[len(st.Steps)-1].End)...)
		}
	}
	return list
}

// turns lists the turns and the sprinklings of the growing piece.
func (c *Case) turns(from, to float64) []visit {
	st := c.Process.Stage(process.Germinate)
	var list []visit
	if st.Turn != nil {
		list = every(*st.Turn, "a turn", from, to)
	}
	if st.Sprinkle != nil {
		list = append(list, every(st.Sprinkle.Every, "a sprinkling", from, to)...)
	}
	slices.SortStableFunc(list, func(a, b visit) int { return cmp.Compare(a.at, b.at) })
	return list
}

// every lists what is done at even intervals. What is done more often than hourly is
// done by a machine.
func every(span process.Quantity, what string, from, to float64) []visit {
	var list []visit
	for at := from + span.SI; span.SI >= hour && at < to; at += span.SI {
		list = append(list, visit{at, what, span.Place})
	}
	return list
}

// start is an hour of the day at which the first soak may begin, and what it misses.
type start struct {
	at     int // s of the day
	missed []visit
}

// bestStart tries each half hour at which somebody is awake, and gives the first of
// those that miss the fewest visits, and of those that miss the most.
func bestStart(list []visit, awake process.Clock) (best, worst start) {
	found := false
	for step := 0; step < int(day); step += 1800 {
		s := start{at: (awake.From + step) % int(day)}
		if !awake.Awake(s.at) {
			continue
		}
		for _, v := range list {
			if asleep(awake, s.at+int(v.at)) {
				s.missed = append(s.missed, v)
			}
		}
		if !found || len(s.missed) < len(best.missed) {
			best = s
		}
		if !found || len(s.missed) > len(worst.missed) {
			worst = s
		}
		found = true
	}
	return best, worst
}

// asleep tells whether nobody is awake, nor was or will be within the patience.
func asleep(c process.Clock, second int) bool {
	for _, shift := range []int{0, -patience, patience} {
		if c.Awake(((second+shift)%int(day) + int(day)) % int(day)) {
			return false
		}
	}
	return true
}

// clock writes a second of some day as a time of day.
func clock(second int) string {
	second = (second/60*60%int(day) + int(day)) % int(day)
	return fmt.Sprintf("%02d:%02d", second/3600, second/60%60)
}
