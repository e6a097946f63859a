package rules

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var co2Room = Rule{
	Rule: finding.Rule{Name: "co2-room", Severity: finding.Caution,
		Title: "the growing grain gives off enough carbon dioxide to fill a room",
		Why: "growing grain gives off carbon dioxide, which lies low and has no smell: 1000 kg gives about 39 m3 in five days (from the heat of respiration of malting barley); " +
			"0.5 % of the air is the limit for a working day of 8 h (OSHA), and several per cent make people faint",
		Do:     "let fresh air in and out at the floor, hang a carbon dioxide alarm at knee height, and never go in alone" + localCodes,
		Bad:    `from 1 t of "base lot"`,
		Good:   `from 4 kg of "base lot"`,
		Limits: "it does not know the room: accept it where the air is moved and an alarm hangs"},
	Judge: func(r finding.Rule, c *Case) {
		st := model.First[*model.Germination](c.Process)
		switch {
		case st == nil:
			return
		case c.Process.Charge == nil:
			c.NotJudged(r, "no weight of grain is given")
			return
		case c.Process.Charge.SI <= roomOfGrain:
			return
		}
		gas, span := c.gasOf()
		f := r.At(c.Process.Charge.Place, fmt.Sprintf("%s of growing grain give off about %s of carbon dioxide in %s", c.Process.Charge, c.Process.Units().Volume(gas), Hours(span)))
		f.Hint = fmt.Sprintf("about %s of fresh air on average, and about twice that on the days of strongest growth, keeps it below 0.5 %%: %s", c.Process.Units().AboutAirflow(gas/span/(workingDay-outdoors)), r.Do)
		f.Related = []finding.Related{{Place: st.Place(), Message: "where it grows"}}
		c.Note(f)
	},
}

const (
	roomOfGrain = 100.0   // kg of grain above which it is judged (common practice: a floor, not a tray)
	gasPerKilo  = 0.039   // m³ of carbon dioxide for each kg of grain, in gasSpan
	gasSpan     = 5 * day // s
	gasVolume   = 0.537   // m³/kg of carbon dioxide at 15 °C and 1013 hPa: RT/(pM), ideal gas
	workingDay  = 0.005   // share of the air, 8 h a day: OSHA, 29 CFR 1910.1000 table Z-1
	outdoors    = 0.0004  // share of the air out of doors (common knowledge: some 420 ppm)
)

// gasOf is how much carbon dioxide the grain gives off, m³, and in what time, s: by
// the forecast, or as usual.
func (c *Case) gasOf() (gas, span float64) {
	if c.Forecast != nil && c.Forecast.Totals.CO2 > 0 {
		began, ended := math.NaN(), math.NaN()
		for _, st := range c.Forecast.Stages {
			if n := len(st.Steps); st.Kind == model.GerminateStage && n > 0 {
				if math.IsNaN(began) {
					began = st.Steps[0].Start
				}
				ended = st.Steps[n-1].End
			}
		}
		if ended > began {
			return c.Forecast.Totals.CO2 * gasVolume, ended - began
		}
	}
	return c.Process.Charge.SI * gasPerKilo, gasSpan
}
