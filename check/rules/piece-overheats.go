package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

var pieceOverheats = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "piece-overheats", Severity: finding.Caution, // a fault where it is lost
		Title: "the piece gets too warm between turns, or warmer than the process holds it",
		Why:   "the growing grain heats itself; warm grain grows unevenly, loses more of its substance and goes mouldy",
		Do:    "turn more often, spread it thinner, keep the room cooler, or give the floor a cooler",
		Bad: `floor "base tray" { area 0.08 m2 }
hold room at 15 to 17 °C
turn every 24 h`,
		Good: `floor "base tray" { area 0.22 m2 }
hold room at 12 to 14 °C
turn every 8 h`,
		Limits: "one degree above the usual most is not reported; a bed that is meant to be warm is compared with its own band" + assumedOnly},
	Judge: func(r finding.Rule, c *Case) {
		most := c.growWarm()
		sure := most + forecastWarmth
		if _, moved := model.FindLimit(c.Process.Limits, vocabulary.LimitBed); moved {
			sure = most + sameWarmth
		}
		harmed := c.Profile.GrowsHot + lostWarmth // whatever limit the house has
		for _, t := range forecast.Troubles[forecast.BedWarm](c.Forecast) {
			switch asked := c.askedOfBed(t.Place); {
			case t.Temperature > harmed && t.Temperature > asked+1:
				c.Note(c.harmedOrLost(r, t))
			case t.Temperature <= sure:
			case asked > most+sameWarmth && t.Temperature <= asked+1: // a bed that is asked to be so warm is judged where it is asked
			default:
				c.Note(c.whileFanStood(r.At(t.Place, fmt.Sprintf("%s, and %s is the most", c.said(t), c.Degrees(most)))))
			}
		}
		for _, t := range c.astray(false) {
			if !byRoom(t.Room, t.Asked) && !c.has(r.Name) {
				c.Note(c.offBand(r, t))
			}
		}
	},
}

// forecastWarmth is how near the forecast knows the warmth of a bed, K: about what two
// thermometers in one bed differ. A threshold of the house is taken as it is written.
const forecastWarmth = 1.0

// The model of its breathing is an extrapolation where a piece is warmer than it bears.
const (
	// lostWarmth is by how much more than it bears a piece must get, K, to be called lost
	// where it stays so warm or its growth does not come to its end either, and in danger
	// where not.
	lostWarmth = 2.0
	// surelyLost is the same for one that is lost whatever its growth comes to.
	surelyLost = 5.0
)

// harmedOrLost is the finding of a piece that gets much warmer than it bears.
func (c *Case) harmedOrLost(r finding.Rule, t forecast.BedWarm) finding.Finding {
	fate := "may be lost"
	f := r.At(t.Place, "")
	if c.lost(t) {
		fate, f.Severity = "is lost", finding.Fault
	}
	f.Message = fmt.Sprintf("%s, and above %s a piece of %s %s", c.said(t), c.Degrees(c.Profile.GrowsHot), c.Profile.Grain.Name, fate)
	return c.rests(r, c.whileFanStood(f), roomKnown...)
}

// askedOfBed is the warmest that a hold of the stage at a place asks for, °C, or nil.
func (c *Case) askedOfBed(stage source.Place) float64 {
	warmest := 0.0
	for _, s := range holdsOf(model.StepsOf(c.Process.StageAt(stage))) {
		_, high := celsius(s.At)
		warmest = max(warmest, high)
	}
	return warmest
}

// whileFanStood says of a bed with air blown through it what its fan did.
func (c *Case) whileFanStood(f finding.Finding) finding.Finding {
	for _, p := range c.Forecast.Pieces {
		if p.Place != f.Place || p.Blown == nil {
			continue
		}
		f.Hint = "blow more air, or colder air"
		if p.Blown.Stood > 2*hour {
			f.Hint = fmt.Sprintf("its fan stops for up to %s, and the bed then warms by 1 to 2 °C an hour: start the fan sooner, or run it by the clock as well", Hours(p.Blown.Stood))
		}
	}
	return f
}
