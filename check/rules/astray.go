package rules

import (
	"fmt"
	"math"

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
	if g := c.growthUnmet(); t.Cold && g != nil && t.Later > coldBlamed*needs(g) {
		f = r.At(t.Place, fmt.Sprintf("%s; within %s it does not come to %s", c.said(t), Hours(g.Waited), g.Text))
		f.Severity = finding.Fault // as of the guard that comes first for it
	}
	f.Related = c.roomSaid()
	return c.rests(r, f, roomKnown...)
}

// coldBlamed is the part of the time still wanted that the cold must have cost to be
// what the growth is late by.
const coldBlamed = 0.5

// growthUnmet is what the growth waits for and does not come to in its time, or nil.
func (c *Case) growthUnmet() *forecast.Gate {
	for i := range c.Forecast.Gates {
		if g := &c.Forecast.Gates[i]; g.Stage == model.GerminateStage && !g.Met && !g.Hold {
			return g
		}
	}
	return nil
}

// needs is how much longer a gate would have taken, s, or the longest that was looked.
func needs(g *forecast.Gate) float64 {
	if math.IsNaN(g.Needs) {
		return 4 * day
	}
	return g.Needs
}

// lost tells whether a piece that gets so warm is lost: where it is far beyond what it bears,
// or stays too warm for hours, or does not come to what it grows for. One that is forecast
// without the fan that it is to have is not judged.
func (c *Case) lost(t forecast.BedWarm) bool {
	if piece := model.PieceOf(c.Process.StageAt(t.Place)); piece != nil && len(piece.Blown) > 0 && !piece.Floor.Blown() {
		return false
	}
	bears := c.Profile.GrowsHot + lostWarmth
	return t.Temperature > c.Profile.GrowsHot+surelyLost || t.Temperature > bears && (c.growthUnmet() != nil || t.Stayed >= bears)
}

// lostToo makes a finding of a piece that gets too warm a fault where it is lost.
func (c *Case) lostToo(f finding.Finding) finding.Finding {
	for _, t := range forecast.Troubles[forecast.BedWarm](c.Forecast) {
		if t.Place == f.Place && c.lost(t) {
			f.Severity = finding.Fault
		}
	}
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
