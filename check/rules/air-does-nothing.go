package rules

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var airDoesNothing = Rule{
	Rule: finding.Rule{Name: "air-does-nothing", Severity: finding.Caution,
		Title: "air at intervals that never gets into any water",
		Why: "aerate blows air through standing soak water. It first does so one interval after the soak begins: " +
			"a shorter soak gets no air, a rest gets none either, and a soak with air has it all the time (by definition)",
		Do: "blow air through more often, or take aerate out",
		Bad: `steep in "base tub" to moisture 42 to 46 % {
  aerate every 8 h for 10 min
  soak 6 h in water at 13 °C
  rest 10 h in air at 14 °C
  soak 7 h in water at 13 °C
  rest 9 h in air at 14 °C
  soak 6 h in water at 13 °C
}`,
		Good: `steep in "base tub" to moisture 42 to 46 % {
  aerate every 1 h for 10 min
  soak 6 h in water at 13 °C
  rest 10 h in air at 14 °C
  soak 7 h in water at 13 °C
  rest 9 h in air at 14 °C
  soak 6 h in water at 13 °C
}`,
		Limits: "it does not judge whether the air is enough: oxygen-gone does"},
	Judge: func(r finding.Rule, c *Case) {
		for _, st := range model.Every[*model.Steep](c.Process) {
			if st.Aerate != nil {
				c.airForNothing(r, st)
			}
		}
	},
}

// airForNothing reports air at intervals that no soak of the steep is the better for.
func (c *Case) airForNothing(r finding.Rule, st *model.Steep) {
	still := slices.DeleteFunc(model.Only[*model.Soak](model.EveryStep(st.Steps)), func(s *model.Soak) bool { return s.Aerated })
	longest := wetting{}
	for _, w := range c.wettingsOf(st) {
		if w.step.Kind() == model.SoakStep && !model.Aerated(w.step) && w.seconds > longest.seconds {
			longest = w
		}
	}
	switch every := st.Aerate.Every; {
	case len(still) == 0:
		c.Note(r.At(st.Aerate.Place(), "there is no soak in still water for the air to be blown through"))
	case longest.step == nil:
		c.NotJudged(r, "no soak is known to be made, or how long it takes")
	case longest.seconds <= every.SI:
		f := r.At(every.Place, fmt.Sprintf("air is blown every %s, and no soak in still water lasts longer than %s", every, lasting(longest.step, longest.seconds)))
		f.Related = []finding.Related{{Place: timeAt(longest.step), Message: "the longest of them"}}
		c.Note(f)
	}
}
