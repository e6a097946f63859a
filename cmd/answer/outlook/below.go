package outlook

import (
	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// Below is the floor of a kiln that another takes its air from.
type Below struct {
	Kiln    string         `doc:"its name"`
	Coolest answer.Celsius `doc:"its exhaust as it comes, while malt lies there"`
	Warmest answer.Celsius `doc:"the same"`
	Heat    answer.Joules  `doc:"of its exhaust above outside air, that of vapour left out, that went through the malt: what no heater gave"`
	Took    answer.Seconds `doc:"how long the steps on the upper floor take"`
	Below   answer.Seconds `json:"took_below" doc:"how long those on the floor below take"`
	Waited  answer.Seconds `doc:"how long the malt lay on for the floor below to be free"`
	Cycle   answer.Seconds `doc:"from one batch to the next, at the least"`
	Found   bool           `doc:"an exhaust was found that dries the upper floor so that the lower one gives it"`
}

// belowOf tells of the floor that a stage took its air from, nil where it took outside air.
func belowOf(f *forecast.Forecast, of model.Stage) *Below {
	for i := range f.Kilns {
		fed := f.Kilns[i].Fed
		if fed == nil || model.Stage(f.Kilns[i].Of) != of {
			continue
		}
		return &Below{Kiln: fed.By.Kiln.Name, Coolest: answer.Celsius(fed.Coolest), Warmest: answer.Celsius(fed.Warmest), Heat: answer.Joules(fed.Heat),
			Took: answer.Seconds(fed.Took), Below: answer.Seconds(fed.Below), Waited: answer.Seconds(fed.Waited), Cycle: answer.Seconds(fed.Cycle()), Found: fed.Met}
	}
	return nil
}
