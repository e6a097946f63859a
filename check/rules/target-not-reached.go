package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

var targetNotReached = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "target-not-reached", Severity: finding.Caution,
		Title: "the steep ends below its moisture by the forecast",
		Why:   "kernels that are too dry chit unevenly, and stop growing before they are modified",
		Do:    "lengthen the soaks or add one, and weigh the drained grain before the end",
		Bad: `steep in "base tub" to moisture 42 to 46 % {
  soak 6 h in water at 11 °C
  rest 9 h in air at 14 °C
  soak 6 h in water at 11 °C
}`,
		Good: `steep in "base tub" to moisture 42 to 46 % {
  soak 6 h in water at 13 °C
  rest 10 h in air at 14 °C
  repeat at most 3 times until moisture at least 43 % {
    soak 7 h in water at 13 °C
    rest 9 h in air at 14 °C
  }
}`,
		Limits: "the forecast of a steep is good to about one point, and two at worst, so a miss of less than half a point is not reported; small or mealy kernels drink faster than the forecast, " +
			"steely ones slower"},
	Judge: func(r finding.Rule, c *Case) { judgeTarget(r, c, false) },
}

// judgeTarget tells of a steep that ends below or above its target, and which soak
// would have to change.
func judgeTarget(r finding.Rule, c *Case, above bool) {
	for i, st := range model.Every[*model.Steep](c.Process) {
		if st.Target != nil {
			c.targetMissed(r, st, i == 0, above)
		}
	}
}

// targetMissed reports the target of a steep. Advice is for the first alone, before which
// nothing has to be forecast again.
func (c *Case) targetMissed(r finding.Rule, st *model.Steep, first, above bool) {
	for _, t := range forecast.Troubles[forecast.TargetMissed](c.Forecast) {
		if t.Place != st.Target.Place || t.Moisture > st.Target.High.SI != above || near(t.Moisture, st.Target) {
			continue
		}
		f := r.At(t.Place, fmt.Sprintf("the steep ends at %s moisture, and its aim is %s", Percent(t.Moisture), t.Place.Text()))
		advice := c.moreSoak
		if above {
			advice = c.lessSoak
		}
		f.Hint = "one longer soak is not enough: look at the number of soaks and at the water temperature; weigh the drained grain to be certain"
		if !first {
			f.Hint = "look at the length of the soaks and at the water temperature; weigh the drained grain to be certain"
		} else if what, repair := advice(st); what != "" {
			f.Hint = what + "; weigh the drained grain to be certain"
			if repair != nil {
				f.Related, f.Fixes = []finding.Related{repair.soak}, []finding.Edit{repair.edit}
			}
		}
		if !above {
			f.Related = append(f.Related, c.shortRests(st)...)
		}
		c.Note(f)
	}
}

// shortRests names the rests in which the grain is drained and no more: it drinks the
// water on its husk in them, when they last.
func (c *Case) shortRests(st *model.Steep) (list []finding.Related) {
	for _, w := range onceEach(c.wettingsOf(st), model.RestStep) {
		if w.seconds < drainsOnly {
			list = append(list, finding.Related{Place: timeAt(w.step), Message: "a rest too short to help"})
		}
	}
	return list
}

// near tells of a moisture that misses the target by less than the forecast can tell:
// half a point.
func near(w float64, target *model.Range) bool {
	return w > target.Low.SI-0.005 && w < target.High.SI+0.005
}
