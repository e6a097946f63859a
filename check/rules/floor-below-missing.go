package rules

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var floorBelowMissing = Rule{
	Rule: finding.Rule{Name: "floor-below-missing", Severity: finding.Fault, // a caution where the floor below has no stage
		Title: "a kiln floor takes air from a floor that this process does not use after it",
		Why:   "the air of an upper floor is the exhaust of the batch before, which lies below in a later stage of the same process. Without that stage nobody knows how warm and damp the air is; with that stage first, malt and air go the same way",
		Do:    "dry on the upper floor first, and then on the floor that its air comes from, in one process",
		Bad: `kiln "base top" { area 0.5 m2; air from "base kiln" }
kiln in "base kiln" {
  dry at air-on 50 °C until moisture at most 10 % allow 3 to 30 h
  cure at air-on 82 °C for 5 h
  gate moisture at most 5 % allow 0 to 4 h
}
kiln in "base top" {
  dry for 1 h
  cool to malt 30 °C
}`,
		Good: `kiln "base top" { area 0.5 m2; air from "base kiln" }
kiln in "base top" { dry at air-on 48 °C for 10 h }
kiln in "base kiln" {
  dry at air-on 55 °C until moisture at most 8 % allow 2 to 12 h
  cure at air-on 82 °C for 5 h
  gate moisture at most 5 % allow 0 to 4 h
  cool to malt 30 °C
}`,
		Limits: "It looks at one process only, not at two that share a kiln"},
	Judge: eachKilning(func(r finding.Rule, c *Case, st *model.Kilning, k *model.Kiln) {
		if !k.Fed() || closed(k) { // of an oven or a drum that is fed facts-clash tells
			return
		}
		below := k.AirFrom
		f := r.At(st.Place(), fmt.Sprintf("the air of %q comes from %q, and the malt lies there first: air and malt go the same way", k.Name, below.Name))
		f.Hint = fmt.Sprintf("dry on %q first, and then on %q", k.Name, below.Name)
		f.Related = []finding.Related{{Place: k.Place, Message: "its air"}}
		switch {
		case c.Process.Giver(st) != nil:
			return
		case !slices.ContainsFunc(model.Every[*model.Kilning](c.Process), func(o *model.Kilning) bool { return o.Kiln == below }):
			f.Severity = finding.Caution
			f.Message = fmt.Sprintf("the air of %q comes from %q, on which this process has no stage: the forecast takes outside air", k.Name, below.Name)
			f.Hint = fmt.Sprintf("write what the malt does on %q as a stage after this one", below.Name)
		}
		c.Note(f)
	}),
}

// closed tells whether no air from elsewhere goes through a kiln.
func closed(k *model.Kiln) bool { return k.Tumbles || k.Draught.Text == vocabulary.DraughtStill }
