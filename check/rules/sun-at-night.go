package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var sunAtNight = Rule{
	Rule: finding.Rule{Name: "sun-at-night", Severity: finding.Caution,
		Title: "a kiln that the sun heats is to be hot for longer than a day is light",
		Why:   "the sun heats for six to ten hours of a clear day; through the night the malt lies damp and cool, goes on growing, takes water back and moulds (common practice)",
		Do:    "give it a second heat for the night, or dry it in steps of a day that each begin in the morning, and spread it thin",
		Bad:   "fired solar\ndry at air-on 50 °C until moisture at most 20 % allow 11 to 16 h",
		Good:  "fired electric\ndry at air-on 50 °C until moisture at most 20 % allow 11 to 16 h",
		Limits: "it takes ten hours of sun and the kiln to begin at sunrise; it knows neither season nor clouds, " +
			"nor heat that a bed of stones keeps"},
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
				f := r.At(s.Place(), fmt.Sprintf("when this step ends the kiln has been heated for %s on end, and the sun is gone after %s", Hours(hot), Hours(light)))
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
