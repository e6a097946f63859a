package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var sunAtNight = Rule{
	Rule: finding.Rule{Name: "sun-at-night", Severity: finding.Caution,
		Title: "a kiln heated by the sun is to be hot for longer than daylight lasts",
		Why:   "the sun heats for six to ten hours of a clear day; at night the malt lies damp and cool, goes on growing, takes up water and moulds (common practice)",
		Do:    "give the kiln a second heat for the night, or dry in steps of one day that begin in the morning, with the malt spread thin",
		Bad:   "fired solar\ndry at air-on 50 °C until moisture at most 20 % allow 11 to 16 h",
		Good:  "fired electric\ndry at air-on 50 °C until moisture at most 20 % allow 11 to 16 h",
		Limits: "it assumes ten hours of sun, and that the kiln begins at sunrise; it knows neither season nor clouds, " +
			"nor the heat that a bed of stones keeps"},
	Judge: eachKiln(func(r finding.Rule, c *Case, _ *model.Kilning, k *model.Kiln) {
		if k.Fired.Text != vocabulary.FiredSolar {
			return
		}
		hot := 0.0
		for _, s := range c.stepsIn(k) {
			if _, ok := hottest(s); !ok {
				continue
			}
			took := atLeast(s)
			if run := c.run(s); run != nil {
				took = run.End - run.Start
			}
			if hot += took; hot > light {
				f := r.At(s.Place(), fmt.Sprintf("the kiln is heated for %s without a break by the end of this step, and the sun is gone after %s", Hours(hot), Hours(light)))
				f.Related = []finding.Related{{Place: k.Fired.Place, Message: "what heats it"}}
				c.Note(f)
				return
			}
		}
		if hot == 0 {
			c.NotJudged(r, "the steps of the kiln do not say how long they take")
		}
	}),
}

// light is how long the sun heats at the most, s.
const light = 10 * hour
