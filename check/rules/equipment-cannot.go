package rules

import (
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/kiln"
)

var equipmentCannot = Rule{
	Rule: finding.Rule{Name: "equipment-cannot", Severity: finding.Fault,
		Title:  "the kiln cannot do what is asked of it",
		Why:    "the malt gets no heat above or below the reach of the kiln, and no more air than its fan moves; and warm air carries away only so much water, however long the malt is dried (a balance of heat and water)",
		Do:     "set a temperature that the kiln reaches, dry with less air, or dry smaller charges",
		Bad:    "reaches 65 to 220 °C   # a bread oven\ndry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h",
		Good:   "reaches 25 to 110 °C\ndry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h",
		Limits: "A kiln may take an hour to reach its heat; a roast that ends below its heat is reported. Heat lost through walls is known only where the kiln names its walls, so another kiln may lack more heat than is reported" + assumedOnly},
	Judge: func(r finding.Rule, c *Case) {
		var told []model.Step
		for _, st := range model.Every[*model.Kilning](c.Process) {
			k := st.Kiln
			if k == nil {
				continue
			}
			for _, s := range st.Steps {
				found := slices.Concat(c.beyondReach(r, k, s), beyondAir(r, k, s), noReturn(r, k, s))
				for _, f := range found {
					c.Note(f)
				}
				if len(found) > 0 {
					told = append(told, s)
				}
			}
		}
		if c.Forecast != nil {
			c.equipmentTroubles(r, told)
		}
	},
}

// equipmentTroubles tells what the forecast finds that the kiln does not do, but for
// steps of which the reason was told.
func (c *Case) equipmentTroubles(r finding.Rule, told []model.Step) {
	for _, t := range c.Forecast.Trouble {
		if slices.ContainsFunc(told, func(s model.Step) bool { return s.Place() == t.Where() }) {
			continue
		}
		f, heater, on := r.At(t.Where(), c.said(t)), false, roomKnown
		switch t := t.(type) {
		case forecast.AirShort:
			on = kilnAir
			f.Hint = "move more air, dry a smaller charge, wither it first, or give it more hours"
			if d := t.Driven; d != nil {
				f.Hint = c.toDrive(d)
				if d.Hardest < d.Needs { // whatever its chimney
					on = nil
				}
			}
		case forecast.HeatsItself:
			on = kilnAir
			f.Hint = "give the malt air at once, or spread it thin and turn it: move more air, dry a smaller charge, or wither it first"
		case forecast.KilnAirShort:
			f.Severity, f.Hint = finding.Caution, "write the airflow that gets through, spread the malt thinner, or give the kiln a stronger fan or a higher chimney"
		case forecast.KilnShort:
			heater = !t.BeyondReach() && !t.ByDrying() && t.Limit != kiln.ByWalls
			if t.Limit == kiln.ByHeater {
				on = kilnHeat
			}
			if t.Limit == kiln.ByFeed {
				heater, f.Severity = false, finding.Caution
				f.Hint = "leave the temperature out to take the air as it comes, or write the heater of this floor"
			}
			if t.ByDoor { // how much it lets out is nearly sure: of the door its height alone is assumed
				on, f.Severity, f.Hint = nil, finding.Caution, "shut the door, or open it less, as in door ajar 2 cm"
			}
			if t.Late {
				f.Severity, f.Hint = finding.Caution, "roast less at a time, with a stronger heater or for longer; or write the temperature that is reached"
			} else if t.ByDrying() {
				f.Severity, f.Hint = finding.Caution, "set the kiln by air-on while the malt is moist, or set a lower temperature"
			}
		case forecast.CannotCool:
			heater = true
		default:
			continue
		}
		if k := c.kilnAt(t.Where()); k != nil {
			f.Related = theKiln(k)
			if heater && k.Heater != nil && k.Airflow != nil {
				f.Related = []finding.Related{{Place: k.Heater.Place, Message: "its heater"}, {Place: k.Airflow.Place, Message: "the air that it warms"}}
			}
		}
		c.Note(c.rests(r, f, on...))
	}
}
