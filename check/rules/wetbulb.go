package rules

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/air"
)

// belowCoolest judges malt, or the air off it, that is asked for below the coolest air of
// the kiln. While it is wet it may be so cool, yet no cooler than a wet bulb in that air;
// dried, it is as warm as the air.
func (c *Case) belowCoolest(f finding.Finding, k *model.Kiln, s model.Step, a setPoint) finding.Finding {
	asked := a.t.Like(a.t.SI)
	wet, known := coolestWet(k, c.Process.Site)
	known = known && !a.start // a rise may begin at what the malt has when it is loaded
	if known && a.t.SI-zeroC < wet-wetBulbApart {
		f.Message = fmt.Sprintf("the step asks for %s of %s, and the coolest air of the kiln is %s: even wet malt gets no cooler in it than about %s", a.where, asked, k.Reaches.Low, a.t.Like(roundK(wet)))
		return f
	}
	f.Message = fmt.Sprintf("the step asks for %s of %s, below the coolest air of the kiln, which reaches %s: only wet malt can be so cool", a.where, asked, k.Reaches)
	f.Severity = finding.Note
	if known && a.t.SI-zeroC < wet+wetBulbNear {
		f.Severity = finding.Caution
		f.Message += fmt.Sprintf(", and no cooler than about %s", a.t.Like(roundK(wet)))
		return f
	}
	if run := c.run(s); run != nil && run.MoistureStart < wetEnough {
		f.Severity = finding.Caution
		f.Message += fmt.Sprintf(", and here it holds %s when the step begins", Percent(run.MoistureStart))
	}
	return f
}

const (
	wetEnough      = 0.20 // moisture; drier malt gives off too little water to stay cool (common practice)
	wetBulbApart   = 2.0  // K; air that is drier than the site says makes as much
	wetBulbNear    = 3.0  // K; so near to it malt comes only while its surface is wet (common practice)
	driestOfAnyAir = 0.0  // relative humidity, where the site does not say it
)

// coolestWet is the wet bulb in the coolest air of a kiln, °C: air of the room at its
// coolest and driest, warmed to what the kiln reaches at the least.
func coolestWet(k *model.Kiln, site *model.Site) (t float64, ok bool) {
	low, room, humidity, pressure := k.Reaches.Low.SI-zeroC, k.Reaches.Low.SI-zeroC, driestOfAnyAir, air.StandardPressure
	if site != nil && site.Air != nil {
		room = site.Air.Low.SI - zeroC
		if site.Humidity != nil {
			humidity = site.Humidity.Low.SI
		}
	}
	outside, err := air.FromRH(room, humidity, pressure)
	if err != nil {
		return 0, false
	}
	warmed, err := air.New(max(low, room), outside.W, pressure)
	if err != nil {
		return 0, false
	}
	t, err = warmed.WetBulb()
	return t, err == nil
}

// roundK gives the whole degree next to t °C, K.
func roundK(t float64) float64 { return math.Round(t) + zeroC }
