package rules

import (
	"fmt"

	"maltwright/lang/finding"
)

var germinationTestSmall = Rule{
	Rule: finding.Rule{Name: "germination-test-small", Severity: finding.Note,
		Title: "a germination test of few kernels",
		Why:   "another handful of the same lot would give another figure: 19 of 20 kernels may come from a lot of 76 to 99 % (Wilson 1927)",
		Do:    "count at least 100 kernels, in one dish or in several; tests of the same day and water are counted together",
		Bad:   `germination 95 % of 20 kernels at 4 ml`,
		Good:  `germination 95 % of 200 kernels at 4 ml`,
		Limits: "it assumes that the kernels come from the whole lot; a hundred from the top of one sack say nothing about the others. " +
			"A test that does not say how many kernels is not judged"},
	Judge: func(r finding.Rule, c *Case) {
		g := c.Process.Grain
		if g == nil || !g.Raw() {
			return
		}
		n, ok := count(g, inLittle)
		switch low, high, known := n.between(); {
		case !ok:
			c.NotJudged(r, "the lot has no germination test in 4 ml of water")
		case !known:
			c.NotJudged(r, "the germination test does not say how many kernels it took")
		case n.kernels < enoughKernels:
			c.Note(r.At(n.place, fmt.Sprintf("%s of only %.0f kernels may come from a lot of %s to %s", n.like.Like(n.share), n.kernels, Percent(low), Percent(high))))
		}
	},
}

// enoughKernels is what a dish of a germination test holds (common practice).
const enoughKernels = 100
