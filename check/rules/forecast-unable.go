package rules

import (
	"fmt"

	"maltwright/check/tell"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

var forecastUnable = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "forecast-unable", Severity: finding.Fault,
		Title:  "the forecast cannot go on",
		Why:    "the process goes beyond what the models cover, or asks for what cannot be done",
		Do:     "look at the value that the message names, and at the step before",
		Bad:    "soak 6 h in water at 60 °C",
		Good:   "soak 6 h in water at 13 °C",
		Limits: "nothing after that step is judged"},
	Judge: func(r finding.Rule, c *Case) {
		for _, t := range forecast.Troubles[forecast.Unable](c.Forecast) {
			c.Note(r.At(t.Place, c.said(t)))
		}
	},
}

// Unable makes the finding of a forecast that could not begin.
func Unable(p *model.Process, err error) finding.Finding {
	return forecastUnable.At(p.Place, fmt.Sprintf("%q cannot be forecast: %s", p.Name, tell.Cause(err, p.Units())))
}
