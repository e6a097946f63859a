package rules

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var heatOfAnotherKiln = Rule{
	Rule: finding.Rule{Name: "heat-of-another-kiln", Severity: finding.Caution,
		Title: "a temperature is set at a place that this kind of kiln does not have",
		Why:   "a fan blows air under a bed, and the air leaves above it tens of degrees cooler while the malt is wet; in an oven without a fan there is only the air about the malt. A step for the one does not suit the other (common practice)",
		Do:    "write where this kiln takes its temperature: oven without a fan; air-on, air-off or malt with a fan; or correct its draught",
		Bad:   "dry at oven 50 °C until moisture at most 20 % allow 3 to 16 h",
		Good:  "dry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h",
		Limits: "The forecast takes both as the air that comes to the malt. A kiln with a natural draught counts as one with a fan. " +
			"It is reported once, at the first step"},
	Judge: eachKiln(func(r finding.Rule, c *Case, _ *model.Kilning, k *model.Kiln) {
		still := k.Draught.Text == vocabulary.DraughtStill
		for _, s := range c.stepsIn(k) {
			t := placedHeat(s)
			if t == nil || !slices.Contains(placesOfOthers[still], t.Where) {
				continue
			}
			f := r.At(t.Place, fmt.Sprintf("oven is the air inside an oven without a fan, and %q has a draught", k.Name))
			f.Hint = "write air-on for the air that is blown under the malt"
			f.Related = []finding.Related{{Place: k.Place, Message: "a still oven says draught still"}}
			if still {
				f.Message = fmt.Sprintf("%s is air blown through the malt, and %q has no fan", t.Where, k.Name)
				f.Hint = "write oven for the air inside it"
				f.Related = []finding.Related{{Place: k.Draught.Place, Message: "the line that says it has no fan"}}
			}
			c.Note(f)
			return
		}
	}),
}

// placesOfOthers are the places that a kiln with a draught (false), or a still oven
// (true), does not have.
var placesOfOthers = map[bool][]string{false: {vocabulary.PlaceOven}, true: {vocabulary.PlaceAirOn, vocabulary.PlaceAirOff}}

// placedHeat is the temperature that a step of the kiln heats to, or nil.
func placedHeat(s model.Step) *model.Temperature {
	switch {
	case s.Kind() == model.CoolStep:
		return nil
	case s.Warmth().From != nil:
		return s.Warmth().From
	}
	return s.Warmth().At
}
