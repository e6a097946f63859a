package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var flueNotSaid = Rule{
	Rule: finding.Rule{Name: "flue-not-said", Severity: finding.Caution,
		Title: "a fire of which nothing says where its smoke and flue gas go",
		Why: "what a flame gives off goes up a flue of its own, or through the malt to where people are; carbon monoxide kills, and nitrogen " +
			"oxides make nitrosamines in drying malt (FDA action level of 10 ppb NDMA). Silence is taken for neither",
		Do:     "say it: by indirect where the gas has a flue of its own, by direct where it goes through the malt" + localCodes,
		Bad:    "heater 3 kW\nfired wood",
		Good:   "heater 3 kW\nfired wood by indirect",
		Limits: "whether the flue is sound it cannot know; of a gas oven without a draught gas-oven-indoors speaks"},
	Judge: eachKiln(func(r finding.Rule, c *Case, _ *model.Kilning, k *model.Kiln) {
		if !vocabulary.Burns(k.Fired.Text) || k.Flue.Text != "" || k.Fired.Text == vocabulary.FiredGas && k.Draught.Text == vocabulary.DraughtStill {
			return
		}
		f := r.At(k.Fired.Place, fmt.Sprintf("nothing says where the flue gas of the %s fire goes", k.Fired.Text))
		indirect, direct := "fired "+k.Fired.Text+" by indirect", "fired "+k.Fired.Text+" by direct"
		f.Hint = fmt.Sprintf("write %s where it has a flue of its own, or %s where it goes through the malt", indirect, direct)
		behind := k.Fired.Place
		behind.Start = behind.End
		f.Offers = []finding.Offer{
			{Says: indirect, Edits: []finding.Edit{{Place: behind, New: " by indirect"}}},
			{Says: direct, Edits: []finding.Edit{{Place: behind, New: " by direct"}}},
		}
		c.Note(f)
	}),
}
