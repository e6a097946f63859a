package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var flueNotSaid = Rule{
	Rule: finding.Rule{Name: "flue-not-said", Severity: finding.Caution,
		Title: "the kiln does not say where the smoke and flue gas of its fire go",
		Why: "flue gas goes up a flue of its own, or through the malt to where people are; carbon monoxide kills, and nitrogen " +
			"oxides make nitrosamines in drying malt (FDA action level of 10 ppb NDMA). The program assumes neither",
		Do:     "write by indirect where the gas has a flue of its own, by direct where it goes through the malt" + localCodes,
		Bad:    "heater 3 kW\nfired wood",
		Good:   "heater 3 kW\nfired wood by indirect",
		Limits: "it cannot know whether the flue is sound; gas-oven-indoors judges a gas oven without a draught"},
	Judge: eachKiln(func(r finding.Rule, c *Case, _ *model.Kilning, k *model.Kiln) {
		if !vocabulary.Burns(k.Fired.Text) || k.Flue.Text != "" || k.Fired.Text == vocabulary.FiredGas && k.Draught.Text == vocabulary.DraughtStill {
			return
		}
		f := r.At(k.Fired.Place, fmt.Sprintf("the kiln does not say where the flue gas of its %s fire goes", k.Fired.Text))
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
