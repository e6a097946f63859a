package rules

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/vocabulary"
)

var weightGateIgnoresLoss = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "weight-gate-ignores-loss", Severity: finding.Fault, // a caution where the hours dry it all the same
		Title:  "the last weight forgets the dry matter that malting loses",
		Why:    "the lost dry matter is missing on the scale, and water weighs in its place: where 8 % is lost, malt at 12 % moisture reads as 4.3 % (a balance of dry matter)",
		Do:     "calculate the weight from the dry matter that comes onto the kiln, or dry a sample",
		Bad:    "cure at air-on 82 °C for 1 h\ngate weight at most 3.7 kg allow 0 to 4 h   # from 4 kg at 12 %",
		Good:   "cure at air-on 82 °C for 5 h\ngate weight at most 3.5 kg allow 0 to 4 h",
		Limits: "It judges only the last weight, after all heat: before a cure the same weight may be meant for moister malt. The loss is that of the forecast, with the rootlets still on."},
	Judge: func(r finding.Rule, c *Case) {
		k, charge, grain := c.kilned(), c.Process.Charge, c.Process.Grain
		list := c.dried(vocabulary.MeasureWeight)
		if k == nil || charge == nil || grain == nil || len(list) == 0 {
			return
		}
		last := list[len(list)-1]
		if last.step < 0 || c.heatedAfter(last.step) || math.IsInf(last.high, 1) {
			return
		}
		if grain.Moisture == nil {
			c.NotJudged(r, "the moisture of the raw grain is not given")
			return
		}
		c.lossIgnored(r, &last, charge.SI*(1-grain.Moisture.SI))
	},
}

// lossIgnored reports the weight if, with the dry matter of the grain, it would be
// that of finished malt, and with what is left of it is not.
func (c *Case) lossIgnored(r finding.Rule, w *weighed, raw float64) {
	k := c.kilned()
	meant, is := 1-raw/w.high, k.MoistureAt(w.high)
	most := max(c.Profile.FinishedMost(), moistMalt)
	if meant < c.Profile.Malt.EndLeast-closeMoisture || meant > most || is <= most || is-meant < noticed {
		return
	}
	q := w.test.Bound.Range.High
	f := r.At(w.test.Place, fmt.Sprintf("%s means %s moisture only if none of the %s of dry matter is lost; the forecast loses %s of it, and malt of that weight holds %s",
		q, Percent(meant), q.Like(raw), Percent(1-k.DryMass/raw), Percent(is)))
	f.Hint = fmt.Sprintf("the malt weighs %[2]s at %[1]s moisture by the forecast; or wait for the moisture itself", Percent(meant), q.Like(k.DryMass/(1-meant)))
	if c.finalMoisture() <= most {
		f.Severity = finding.Caution // dried further without it, but the weight guards nothing
	}
	f.Related = []finding.Related{{Place: c.Process.Charge.Place, Message: c.chargeIs()}}
	c.Note(f)
}

// chargeIs names what the charge is of.
func (c *Case) chargeIs() string {
	switch g := c.Process.Grain; {
	case g.Grown():
		return "the green malt"
	case g.Kilned():
		return "the malt"
	}
	return "the raw grain"
}

// noticed is by how much moisture the two must differ to be told.
const noticed = 0.02
