package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// What the rules of a bed that does not keep to its band share.

// astray lists the beds that are too cold for their band, or too warm.
func (c *Case) astray(cold bool) (list []forecast.BedOff) {
	for _, t := range forecast.Troubles[forecast.BedOff](c.Forecast) {
		if t.Cold == cold {
			list = append(list, t)
		}
	}
	return list
}

// offBand is the finding of a bed that is not in its band: where it comes to, and what
// that does to its growth.
func (c *Case) offBand(r finding.Rule, t forecast.BedOff) finding.Finding {
	f := r.At(t.Place, c.said(t))
	for _, g := range c.Forecast.Gates {
		if t.Cold && g.Stage == model.GerminateStage && !g.Met && !g.Hold {
			f = r.At(t.Place, fmt.Sprintf("%s; within %s it does not come to %s", c.said(t), Hours(g.Waited), g.Text))
			f.Severity = finding.Fault // as of the guard that comes first for it
			break
		}
	}
	f.Related = c.roomSaid()
	return f
}

// byRoom tells whether a room alone keeps a bed above its band.
func byRoom(room float64, asked *model.Temperature) bool {
	return room > max(asked.Low.SI, asked.High.SI)-zeroC+sameWarmth
}

// roomSaid is where the site says how warm its air is.
func (c *Case) roomSaid() []finding.Related {
	if c.Process.Site == nil || c.Process.Site.Air == nil {
		return nil
	}
	return []finding.Related{{Place: c.Process.Site.Air.Place, Message: "the air of the room"}}
}
