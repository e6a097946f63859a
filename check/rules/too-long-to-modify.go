package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

var tooLongToModify = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "too-long-to-modify", Severity: finding.Caution,
		Title:  "the kernel is overgrown when the growth ends",
		Why:    "an acrospire that grows out of the kernel has used up its starch: less extract, more loss, a thin beer (common practice)",
		Do:     "end the growth sooner, or keep the bed cooler",
		Bad:    "until acrospire at least 3/4\nallow 9 to 12 days",
		Good:   "until acrospire at least 3/4\nallow 4 to 8 days",
		Limits: "lots differ by an eighth in how fast they grow, and a difference so small is not reported"},
	Judge: func(r finding.Rule, c *Case) {
		st := c.lastGrowth()
		floor, last := c.grown()
		if st == nil || floor == nil || c.longGoal(st) {
			return
		}
		goal := c.Profile.Goal()
		switch {
		case goal.Known() && last.Acrospire > goal.High*(1+lotsDiffer):
			c.Note(c.overgrown(r, st, floor, last))
		case !goal.Known() && floor.Took > c.Profile.MostDays*day+hour:
			c.Note(r.At(timeOf(st), fmt.Sprintf("it grows for %s, and %s takes %.4g to %.4g days",
				Hours(floor.Took), c.Profile.Grain.Name, c.Profile.GrowDays().Low, c.Profile.GrowDays().High)))
		}
	},
}

// longGoal tells whether the growth waits for a longer acrospire than is usual,
// which is found fault with where it is written.
func (c *Case) longGoal(st *model.Germination) bool {
	for _, t := range goals(st) {
		if length, ok := waitsFor(&t); ok && t.Measure == vocabulary.MeasureAcrospire && length > c.Profile.Goal().High {
			return true
		}
	}
	return false
}

func (c *Case) overgrown(r finding.Rule, st *model.Germination, floor, last *forecast.Piece) finding.Finding {
	when := "after"
	if floor != last {
		when = "when it has withered, after"
	}
	place := overgrownBy(c, st, floor, last)
	f := r.At(place, fmt.Sprintf("%s %s the acrospire is %.2f of the kernel, and %s of the kernels are overgrown",
		when, Hours(last.Began+last.Took-floor.Began), last.Acrospire, Percent(last.Overgrown)))
	switch {
	case place != timeOf(st):
		f.Hint = "the piece grows on while it withers: end the growth sooner, or wither it faster or cooler"
	case st.Until != nil && st.Allow != nil && st.Allow.Earliest != nil && c.heldBack(st):
		f.Hint = fmt.Sprintf("its earliest time keeps it growing until %s: allow it to end sooner", Hours(st.Allow.Earliest.SI))
	}
	return f
}

// heldBack tells whether a stage was at its end before its earliest time.
func (c *Case) heldBack(st *model.Germination) bool {
	for _, g := range c.Forecast.Gates {
		if g.Of == st && g.Place == st.Until.Place && g.Met && g.First < g.Waited {
			return true
		}
	}
	return false
}

// overgrownBy is what let it grow too long: the time of the growth, or the
// withering, where it was still right before that.
func overgrownBy(c *Case, st *model.Germination, floor, last *forecast.Piece) source.Place {
	if floor != last && floor.Acrospire <= c.Profile.Goal().High*(1+lotsDiffer) {
		return last.Place
	}
	return timeOf(st)
}
