package rules

import (
	"fmt"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var airCannotHoldBed = Rule{
	Rule: finding.Rule{Name: "air-cannot-hold-bed", Severity: finding.Caution,
		Title: "the air that is blown does not keep the bed in its band",
		Why:   "growing grain is warmer than the air through it: by half of what the air warms on its way in the middle of a box, by all of it in a drum, 1.5 to 4 °C at the strongest growth (a balance of heat)",
		Do:    "blow colder air, or more of it; where the bed is too cold, blow warmer air, or less of it, or stop the fan below a bed temperature",
		Bad: `floor "base tray" { area 0.02 m2; airflow 3 m3/h; heater 100 W; cooler 200 W }
germinate on "base tray" {
  hold bed at 14 to 16 °C
  air at air-on 17 °C
  turn every 8 h
  until acrospire at least 3/4 and rub is chalky
  allow 4 to 8 days
}`,
		Good: `floor "base tray" { area 0.02 m2; airflow 3 m3/h; heater 100 W; cooler 200 W }
germinate on "base tray" {
  hold bed at 14 to 16 °C
  air at air-on 13.5 °C
  turn every 8 h
  until acrospire at least 3/4 and rub is chalky
  allow 4 to 8 days
}`,
		Limits: "it does not report one degree outside the band, the first 12 h of a hold, or 6 h in all"},
	Judge: func(r finding.Rule, c *Case) {
		for _, st := range c.Process.Stages {
			if grow, ok := st.(*model.Germination); ok && grow.Floor.Blown() {
				c.tooWarmAir(r, grow)
			}
		}
		if c.Forecast == nil {
			return
		}
		for _, p := range c.Forecast.Pieces {
			if p.Blown == nil {
				continue
			}
			for _, m := range p.Blown.Missed {
				if !c.told(m.Place) && !c.has(r.Name) {
					f := r.At(m.Place, c.outOfBand(m.Above, m.Most, m.Below, m.Coldest))
					switch {
					case m.Below == 0:
						f.Hint = "blow colder air, or more of it"
					case m.Above == 0:
						f.Hint = "blow warmer air, or less of it, or stop the fan below a bed temperature"
					}
					c.Note(f)
				}
			}
		}
	},
}

// tooWarmAir reports air that is all as warm as the warmest that the bed may be.
func (c *Case) tooWarmAir(r finding.Rule, st *model.Germination) {
	for _, s := range model.Only[*model.Hold](st.Steps) {
		if s.At == nil || ofRoom(s.At) || len(st.Blown) == 0 {
			continue
		}
		for _, a := range st.Blown {
			if a.At.Low.SI < s.At.High.SI {
				return
			}
		}
		a := st.Blown[0]
		f := r.At(a.At.Place, fmt.Sprintf("air-on of %s cannot keep the bed at %s: growing grain is warmer than its air", a.At.Range.Range, s.At.Range.Range))
		f.Related = []finding.Related{{Place: s.At.Place, Message: "the band"}}
		c.Note(f)
		return
	}
}

func (c *Case) outOfBand(above, most, below, coldest float64) string {
	var parts []string
	for _, p := range []struct {
		time, t float64
		side    string
	}{{above, most, "above it, up to"}, {below, coldest, "below it, down to"}} {
		if p.time > 0 {
			parts = append(parts, fmt.Sprintf("%s %s %s", Hours(p.time), p.side, c.Degrees(p.t)))
		}
	}
	return "the middle of the bed does not stay in its band: " + strings.Join(parts, ", and ")
}
