package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var gasOvenIndoors = Rule{
	Rule: finding.Rule{Name: "gas-oven-indoors", Severity: finding.Danger,
		Title: "a gas oven without a draught is to run for hours",
		Why: "a gas oven of the kitchen gives its flue gas to the room; cooking takes an hour, drying malt takes many, and carbon monoxide " +
			"kills without a smell (common practice of fire services: never heat with an oven)",
		Do:     "dry the malt with electric heat, or in a kiln with a flue; have a carbon monoxide alarm in the room" + localCodes,
		Bad:    "draught still\nfired gas",
		Good:   "draught natural\nfired gas by indirect",
		Limits: "it does not know the room, nor whether the oven has a flue of its own: write draught natural for one that has"},
	Judge: eachKiln(func(r finding.Rule, c *Case, _ *model.Kilning, k *model.Kiln) {
		if k.Fired.Text != vocabulary.FiredGas || k.Draught.Text != vocabulary.DraughtStill {
			return
		}
		how := ""
		if _, least := c.heated(k); least > 0 {
			how = " for " + Hours(least)
		}
		f := r.At(k.Fired.Place, fmt.Sprintf("%q burns gas%s with no draught that takes its flue gas away", k.Name, how))
		f.Related = []finding.Related{{Place: k.Draught.Place, Message: "the line that says it has no draught"}}
		c.Note(f)
	}),
}
