package rules

import (
	"fmt"
	"slices"

	"maltwright/check/tell"
	"maltwright/lang/finding"
	"maltwright/sim/visits"
)

var visitAtNight = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "visit-at-night", Severity: finding.Note,
		Title: "whenever the steep begins, a step that needs somebody falls due when nobody is awake, or on a day when nobody is there",
		Why:   "a soak that waits until somebody wakes up lasts hours too long, and a piece that is not turned heats (common practice)",
		Do:    "choose soaks and rests so that each pair takes 8, 12 or 24 h, or turn less often in a cooler room" + localCodes,
		Bad:   "turn every 3 h",
		Good:  "turn every 8 h",
		Limits: "it looks at the steep and at the turns of the growing piece, and allows an hour early or late; " +
			"it does not look at the kiln, which somebody lights when it suits"},
	Judge: func(r finding.Rule, c *Case) {
		site, dated := c.Process.Site, c.On != ""
		if site == nil || len(site.Awake) == 0 && (len(site.Away) == 0 || !dated) {
			c.NotJudged(r, "the site does not say when somebody is awake")
			return
		}
		due := c.dues()
		if len(due.list) == 0 {
			return
		}
		best, worst := visits.BestBy(site.Hours, due.missed)
		night, away := due.parted(best)
		if len(night) > 0 {
			nights, _ := due.parted(worst)
			first := night[0]
			f := r.At(first.Place, fmt.Sprintf("of %d steps that need somebody, at least %s due when nobody is awake, the first of them %s, at %s",
				len(due.list), fall(len(night)), tell.Due(first), clock(due.clock(best.At, first)(first.At).Second)))
			f.Hint = fmt.Sprintf("begin the first soak at %s, which leaves %d of them; beginning at %s leaves %d; %s",
				clock(best.At), len(night), clock(worst.At), len(nights), r.Do)
			if !slices.ContainsFunc(night, func(t visits.Task) bool { return t.Wall == nil }) {
				f.Hint = "turn at times of day when somebody is awake" + localCodes // no start moves them
			}
			c.Note(f)
		}
		if len(away) > 0 {
			c.Note(due.nobodyThere(r, best.At, away))
		}
	},
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
