package rules

import (
	"fmt"
	"time"

	"maltwright/lang/finding"
	"maltwright/lang/process"
)

var germinationTestOld = Rule{
	Rule: finding.Rule{Name: "germination-test-old", Severity: finding.Note,
		Title:  "a germination test that is older than 8 weeks",
		Why:    "a lot wakes from its sleep in store, and later dies in it; how it bears water changes as well (common practice)",
		Do:     "test the lot again before it is steeped; it takes three days",
		Bad:    "germination 97 % of 200 corns at 4 ml on 2025-10-02\ngermination 79 % of 200 corns at 8 ml on 2026-02-02",
		Good:   "germination 97 % of 200 corns at 4 ml on 2026-02-02\ngermination 79 % of 200 corns at 8 ml on 2026-02-02",
		Limits: "a process is no batch and has no day of its own: without check --on a test is only held against the newest of its lot"},
	Judge: func(r finding.Rule, c *Case) {
		g := c.Process.Grain
		if g == nil || len(g.Germination) == 0 {
			return
		}
		last := newest(g)
		if last == "" {
			c.NotJudged(r, "no germination test has a date")
			return
		}
		against, says := last, "this test is %.0f weeks older than the newest of the lot, and 8 weeks is the most"
		if c.On != "" {
			against, says = c.On, "on the day of the first soak this test is %.0f weeks old, and 8 weeks is the most"
		}
		for _, kind := range []func(process.Germination) bool{inLittle, inEight} {
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

// testKeeps is how long a germination test says something (common practice).
const testKeeps = 8 * 7 * 24 * time.Hour
