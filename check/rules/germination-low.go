package rules

import (
	"fmt"

	"maltwright/lang/finding"
)

var germinationLow = Rule{
	Rule: finding.Rule{Name: "germination-low", Severity: finding.Caution, // a fault where the lot is certain to be poor
		Title: "fewer kernels germinate than malt needs",
		Why:   "a kernel that does not grow stays raw: it gives no extract, filters badly and goes mouldy on the floor; malting barley is bought at 95 % and more (common practice)",
		Do:    "a young lot may only be dormant: store it dry for some weeks and test it again; otherwise use another lot, and keep this one for feed",
		Bad:   `germination 82 % of 200 kernels at 4 ml`,
		Good:  `germination 97 % of 200 kernels at 4 ml`,
		Limits: "it does not know a dormant kernel from a dead one; a test with hydrogen peroxide does. Tests in 8 ml of water are left out, " +
			"because living kernels drown in them"},
	Judge: judgeGermination,
}

func judgeGermination(r finding.Rule, c *Case) {
	g := c.Process.Grain
	if g == nil || !g.Raw() {
		return
	}
	n, ok := count(g, inLittle)
	if !ok {
		c.NotJudged(r, "the lot has no germination test in 4 ml of water")
		return
	}
	least := c.Profile.Sprouts
	if n.share >= least-1e-9 {
		return
	}
	f := r.At(n.place, fmt.Sprintf("%s of the kernels germinate, and %[3]s needs %[2]s", n.like.Like(n.share), Percent(least), c.Profile.Grain.Name))
	switch low, high, counted := n.between(); {
	case !counted:
		f.Hint = "write how many kernels were tested, to see how certain that is; " + f.Hint
	case high >= least:
		f.Message += fmt.Sprintf("; with %.0f kernels tested the lot may lie at %s to %s", n.kernels, Percent(low), Percent(high))
		f.Hint = fmt.Sprintf("count %.0f kernels more before you judge the lot; %s", max(200, n.kernels), f.Hint)
	case high < 1-2*(1-least):
		f.Severity = finding.Fault
		f.Message += fmt.Sprintf("; the lot as a whole lies at %s at most", Percent(high))
	default:
		f.Message += fmt.Sprintf("; the lot as a whole lies at %s to %s", Percent(low), Percent(high))
	}
	c.Note(f)
}
