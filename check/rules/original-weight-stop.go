package rules

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var originalWeightStop = Rule{
	Rule: finding.Rule{Name: "original-weight-stop", Severity: finding.Fault, // a caution where it is dried further
		Title: "the malt is dried to what the raw grain weighed",
		Why:   "malt that weighs as much as the raw grain is as dry only if no dry matter is lost. Steeping, breath and growth take 5 to 8 %, and water is in its place: 16.4 % moisture where the grain had 12 % and 5 % is lost (a balance of dry matter)",
		Do:    "wait for a moisture, or calculate the weight from the dry matter that is left",
		Bad: `from 4 kg of "base lot"
dry at air-on 50 °C until weight at most 4 kg allow 6 to 24 h
cure at air-on 82 °C for 5 h`,
		Good: `from 4 kg of "base lot"
dry at air-on 50 °C until moisture at most 10 % allow 6 to 24 h
cure at air-on 82 °C for 5 h`,
		Limits: "It judges weights within 2 % of the charge" + assumedOnly},
	Judge: func(r finding.Rule, c *Case) {
		if c.Process.Charge == nil || !c.Process.Grain.Raw() { // green malt weighs less at once
			return
		}
		charge := c.Process.Charge.SI
		for _, w := range c.dried(vocabulary.MeasureWeight) {
			if math.Abs(w.high-charge) > asHeavy*charge {
				continue
			}
			f := r.At(w.test.Place, fmt.Sprintf("%s is what the raw grain weighed: %s", w.test.Bound.Range.High, c.grainWeight(w.high)))
			if k := c.kilned(); k != nil {
				f.Hint = fmt.Sprintf("the batch weighs %s at 10 %% moisture by the forecast: write that weight, or the moisture itself", w.test.Bound.Range.High.Like(k.DryMass/(1-dryMalt)))
			}
			if c.driedFurther(&w) {
				f.Severity = finding.Caution
			}
			f.Related = []finding.Related{{Place: c.Process.Charge.Place, Message: "the raw grain"}}
			c.Note(c.rests(r, f, rawKnown...))
		}
	},
}

const (
	asHeavy   = 0.02 // share by which two weights are the same on a house's scale
	usualLoss = 0.05 // of the dry matter, up to the kiln (common practice: 5 to 8 %)
)

// grainWeight says what malt of the weight holds.
func (c *Case) grainWeight(weight float64) string {
	if k := c.kilned(); k != nil {
		return fmt.Sprintf("at that weight the malt still holds %s moisture by the forecast", Percent(k.MoistureAt(weight)))
	}
	raw := 0.12
	if g := c.Process.Grain; g != nil && g.Moisture != nil {
		raw = g.Moisture.SI
	}
	return fmt.Sprintf("at that weight the malt still holds about %s moisture, if %s of the dry matter is lost", Percent(1-(1-raw)*(1-usualLoss)*c.Process.Charge.SI/weight), Percent(usualLoss))
}

// driedFurther tells whether a bound on moisture or on less weight follows before
// the malt is cured or done.
func (c *Case) driedFurther(w *weighed) bool {
	cure := c.cureAfter(w.step)
	for _, next := range c.dried(vocabulary.MeasureMoisture) {
		if w.step < next.step && next.step < cure && next.high <= dampMalt+nearlyDry {
			return true
		}
	}
	for _, next := range c.dried(vocabulary.MeasureWeight) {
		if w.step < next.step && next.step < cure && next.high < w.high*(1-asHeavy) {
			return true
		}
	}
	return false
}

// cureAfter gives the place of the next step with the heat of a cure, or of the end.
func (c *Case) cureAfter(step int) int {
	steps := c.steps(model.KilnStage)
	for i, s := range steps {
		if top, _, ok := peak(s); ok && i > step && curing(c, s, top.SI-zeroC) {
			return i
		}
	}
	return len(steps)
}
