package rules

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var floorsOutOfStep = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "floors-out-of-step", Severity: finding.Caution,
		Title: "the malt does not lie as long on one floor of a kiln as on the other",
		Why: "the upper floor of a kiln dries by the air off the lower one, on which the charge before it is finished: when that is done it is emptied, the malt above is dropped down, and the next charge is loaded. " +
			"Where one stage takes hours longer, either floor waits for the other, or malt goes down that is not as dry as was meant (common practice of two-floor kilns)",
		Do: "give both stages the same hours, counting what the gates wait and the cooling; what the upper floor lacks the lower one must make good",
		Bad: `kiln "lower floor" { area 0.5 m2; airflow 90 m3/h; reaches 20 to 110 °C; heater 1.4 kW; fired electric }
kiln "upper floor" { area 0.5 m2; air from "lower floor" }
kiln in "upper floor" { dry for 30 h }
kiln in "lower floor" {
  dry at air-on 60 °C until moisture at most 8 % allow 1 to 16 h
  gate moisture at most 8 % allow 0 to 12 h
  cure at air-on 82 °C for 5 h
  cool to malt 30 °C
}`,
		Good:   "dry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h",
		Limits: "It takes the charge below to be the same process, one cycle before. A quarter more or less is not told, nor a difference of less than two hours"},
	Judge: eachKilning(func(r finding.Rule, c *Case, st *model.Kilning, k *model.Kiln) {
		if k == nil || k.AirFrom == nil {
			return
		}
		below := c.stageOn(k.AirFrom)
		if below == nil {
			c.NotJudged(r, fmt.Sprintf("no stage of the process is on %q, from which the air comes", k.AirFrom.Name))
			return
		}
		up, down := c.tookOnKiln(st), c.tookOnKiln(below)
		if c.Forecast.BrokenOff() || up == 0 || down == 0 || math.Abs(up-down) <= max(inStep*max(up, down), 2*hour) {
			return
		}
		f := r.At(st.Place(), fmt.Sprintf("the malt lies on %q for %s, and on %q for %s: both are loaded and emptied together", k.Name, Hours(up), k.AirFrom.Name, Hours(down)))
		f.Related = []finding.Related{{Place: below.Place(), Message: "the other floor"}}
		c.Note(f)
	}),
}

// inStep is by which part of the longer one two floors may differ (common practice: gates wait).
const inStep = 0.25

// stageOn is the first stage on a kiln, nil for none.
func (c *Case) stageOn(k *model.Kiln) *model.Kilning {
	for _, st := range model.Every[*model.Kilning](c.Process) {
		if st.Kiln == k {
			return st
		}
	}
	return nil
}

// tookOnKiln is how long the malt lies on the kiln of a stage, s; 0 where it never came there.
func (c *Case) tookOnKiln(st *model.Kilning) (seconds float64) {
	for _, on := range c.Forecast.Stages {
		if on.Of == model.Stage(st) {
			for _, s := range on.Steps {
				seconds += s.End - s.Start
			}
		}
	}
	return seconds
}
