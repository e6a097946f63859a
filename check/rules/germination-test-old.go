package rules

import (
	"fmt"
	"time"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var germinationTestOld = Rule{
	Rule: finding.Rule{Name: "germination-test-old", Severity: finding.Note,
		Title:  "a germination test that is older than 8 weeks",
		Why:    "a lot loses its dormancy in store, and later dies there; its sensitivity to water changes too (common practice)",
		Do:     "test the lot again before it is steeped; it takes three days",
		Bad:    "germination 97 % of 200 kernels at 4 ml on 2025-10-02\ngermination 79 % of 200 kernels at 8 ml on 2026-02-02",
		Good:   "germination 97 % of 200 kernels at 4 ml on 2026-02-02\ngermination 79 % of 200 kernels at 8 ml on 2026-02-02",
		Limits: "a process has no day of its own: without check --on a test is only compared with the newest of its lot"},
	Judge: func(r finding.Rule, c *Case) {
		g := c.Process.Grain
		if g == nil || !g.Raw() || len(g.Germination) == 0 {
			return
		}
		last := newest(g)
		if last == "" {
			c.NotJudged(r, "no germination test has a date")
			return
		}
		if f, ok := wrongDate(r, g, c.On); ok {
			c.Note(f)
			return
		}
		against, says := last, "this test is %.0f weeks older than the newest test of the lot, and 8 weeks is the most"
		if c.On != "" {
			against, says = c.On, "on the day of the first soak this test is %.0f weeks old, and 8 weeks is the most"
		}
		for _, kind := range []func(model.GerminationTest) bool{inLittle, inEight} {
			n, ok := count(g, kind)
			if !ok {
				continue
			}
			if age, ok := apart(n.on, against); ok && age > testKeeps {
				c.Note(r.At(n.place, fmt.Sprintf(says, age.Hours()/168)))
			}
		}
		if c.On == "" {
			c.NotJudged(r, fmt.Sprintf("the day of the first soak is not given, with --on; the newest test is of %s, and holds for 8 weeks", last))
		}
	},
}

// lotKeeps is how far apart the tests of one lot can be: barley is of one harvest, and
// dies in store in some years (common practice).
const lotKeeps = 5 * 365 * 24 * time.Hour

// wrongDate finds a test that lies years behind another of its lot, or behind the day of
// the first soak: it is the later date that is to be looked at first, since the tests of
// that day are taken for the newest.
func wrongDate(r finding.Rule, g *model.Grain, on string) (f finding.Finding, ok bool) {
	first, last := -1, -1
	for i, t := range g.Germination {
		switch d := t.On.Text; {
		case d == "":
		case first < 0:
			first, last = i, i
		case d < g.Germination[first].On.Text:
			first = i
		case d > g.Germination[last].On.Text:
			last = i
		}
	}
	if first < 0 {
		return f, false
	}
	late, early := g.Germination[last].On, g.Germination[first].On
	if gap, known := apart(early.Text, late.Text); known && gap > lotKeeps {
		f = r.At(late.Place, fmt.Sprintf("this test is %s years after that of %s, and no lot keeps so long; one of the two dates is wrong", years(gap), early.Text))
		f.Related = []finding.Related{{Place: early.Place, Message: "the other date"}}
	} else if gap, known = apart(on, late.Text); known && gap > lotKeeps {
		f = r.At(late.Place, fmt.Sprintf("this test is %s years after the first soak, on %s", years(gap), on))
	} else {
		return f, false
	}
	f.Hint = "look at the years"
	return f, true
}

func years(d time.Duration) string { return fmt.Sprintf("%.0f", d.Hours()/24/365.25) }

// testKeeps is how long a germination test says something (common practice).
const testKeeps = 8 * 7 * 24 * time.Hour
