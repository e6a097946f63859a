package rules

import (
	"fmt"
	"time"

	"maltwright/check/tell"
	"maltwright/lang/finding"
	"maltwright/sim/visits"
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
		site, dated := c.Process.Site, c.On != ""
		if site == nil || len(site.Awake) == 0 && (len(site.Away) == 0 || !dated) {
			c.NotJudged(r, "the site does not say when somebody is awake")
			return
		}
		list := visits.Growing(visits.List(c.Forecast))
		if len(list) == 0 {
			return
		}
		begun := c.begun()
		best, worst := visits.Best(list, site.Hours, begun)
		if len(best.Missed) == 0 {
			return
		}
		first, nobody, when := best.Missed[0], "awake", clock(best.At+int(best.Missed[0].At))
		for _, t := range best.Missed {
			if begun(best.At).Away(site.Hours, t.At) {
				nobody = "there"
			}
		}
		if at := begun(best.At)(first.At); nobody == "there" {
			when = at.Day.Format(time.DateOnly) + " " + when
		}
		f := r.At(first.Place, fmt.Sprintf("of %d steps that need a hand at least %s due when nobody is %s, the first of them %s, at %s",
			len(list), fall(len(best.Missed)), nobody, tell.Due(first), when))
		f.Hint = fmt.Sprintf("begin the first soak at %s, which leaves %d of them; at %s it would be %d; %s",
			clock(best.At), len(best.Missed), clock(worst.At), len(worst.Missed), r.Do)
		c.Note(f)
	},
}

// begun is the clock of a first soak at a second of the day on which it is known to be, or
// else of any day.
func (c *Case) begun() func(start int) visits.Clock {
	on, err := time.Parse(time.DateOnly, c.On)
	if err != nil {
		return visits.Daily
	}
	return func(start int) visits.Clock { return visits.From(on.Add(time.Duration(start) * time.Second)) }
}

func fall(n int) string {
	if n == 1 {
		return "one falls"
	}
	return fmt.Sprintf("%d fall", n)
}

// clock writes a second of some day as a time of day.
func clock(second int) string {
	second = (second/60*60%int(day) + int(day)) % int(day)
	return fmt.Sprintf("%02d:%02d", second/3600, second/60%60)
}
