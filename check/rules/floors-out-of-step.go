package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

var floorsOutOfStep = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "floors-out-of-step", Severity: finding.Caution,
		Title: "two floors of a kiln do not take the same time",
		Why:   "the malt goes down when the floor below is free, and both floors are loaded at once. The floor that is ready first waits for the other: the malt lies on in the exhaust, or it lies above without air while the floor below stands empty (common practice: both stages fill the cycle)",
		Do:    "move drying from the floor that takes longer to the other: the moisture at which the upper stage ends settles both",
		Bad: `kiln "base top" { area 0.5 m2; air from "base kiln" }
kiln in "base top" { dry at air-on 45 °C for 6 h }
kiln in "base kiln" {
  dry at air-on 55 °C until moisture at most 8 % allow 2 to 12 h
  cure at air-on 82 °C for 5 h
  gate moisture at most 5 % allow 0 to 4 h
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
		Limits: "It assumes that loading and turning over take no time, and that the batch before went as the process says. It does not report an hour, or a tenth of the cycle"},
	Judge: func(r finding.Rule, c *Case) {
		if c.Forecast.BrokenOff() {
			return
		}
		for i := range c.Forecast.Kilns {
			if k := &c.Forecast.Kilns[i]; k.Fed != nil {
				c.outOfStep(r, k)
			}
		}
		for _, t := range forecast.Troubles[forecast.FloorsApart](c.Forecast) {
			f := r.At(t.Where(), c.said(t))
			f.Hint = "two batches of this process would never go alike: end both stages by the clock, or let the upper one end well before the lower"
			c.Note(f)
		}
	},
}

// What two floors may differ by.
const (
	floorsApart    = 3600.0 // s
	floorsApartFor = 0.1    // share of the cycle
)

// outOfStep tells of a stage that takes longer or shorter than the one that its air comes from.
func (c *Case) outOfStep(r finding.Rule, k *forecast.Kilned) {
	fed := k.Fed
	apart := fed.Took - fed.Below
	if max(apart, -apart) <= max(floorsApart, floorsApartFor*max(fed.Took, fed.Below)) {
		return
	}
	upper, lower := k.Of.Kiln.Name, fed.By.Kiln.Name
	lies := fmt.Sprintf("the malt takes %s on %q and %s on %q", quantity.Lasting(fed.Took), upper, quantity.Lasting(fed.Below), lower)
	f := r.At(k.Place, fmt.Sprintf("%s: %q stands empty for %s of each cycle, and the malt above has none of its air then", lies, lower, quantity.Lasting(apart)))
	f.Hint = fmt.Sprintf("end this stage at more moisture, and leave some %s of its drying to %q", quantity.Lasting(apart/2), lower)
	if apart < 0 {
		f.Message = fmt.Sprintf("%s: it waits %s on %q, in the exhaust of the batch before, and goes down at %s", lies, quantity.Lasting(fed.Waited), upper, Percent(endOf(c.Forecast, k.Of)))
		f.Hint = fmt.Sprintf("let it dry on here, and take some %s of drying from %q", quantity.Lasting(-apart/2), lower)
	}
	f.Related = []finding.Related{{Place: fed.By.Place(), Message: "the floor below"}}
	c.Note(f)
}

// endOf is the moisture, wet basis, with which a stage ends.
func endOf(f *forecast.Forecast, of *model.Kilning) float64 {
	for _, st := range f.Stages {
		if n := len(st.Steps); n > 0 && st.Of == model.Stage(of) {
			return st.Steps[n-1].MoistureEnd
		}
	}
	return 0
}
