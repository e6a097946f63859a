package text

import (
	"fmt"
	"math"
	"strings"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/lang/vocabulary"
)

// totals writes what comes of the batch, or where the forecast broke off.
func (s *Sheet) totals(r outlook.Result) {
	t := r.Totals
	if !math.IsNaN(float64(t.SteepOut)) {
		s.para("steep-out", "after %s at %.1f %% moisture, with %s of water drawn", words.Lasting(t.SteepOut), 100*t.SteepOutMoisture, s.Water(float64(t.SteepWater)))
	}
	if b := r.BrokenOff; b != nil {
		s.para("broken off", "%s", s.Say(b.Why))
		return
	}
	s.growth(r.Growth, t.CO2)
	s.bed(t.BedHeat, t.BedCold)
	s.para("total time", "%s%s", words.Lasting(t.Total), ready(r.Start, t.Total))
	switch {
	case s.ends(r.NotForecast):
	case r.NoMalt != nil:
		s.para("no malt", "%s", words.NoMalt(*r.NoMalt, r.Green))
	default:
		s.malt(r)
	}
	s.blown(t.Blown)
	s.beds(r)
	if t.Sprinkled > 0 {
		s.para("sprinkled", "%s of water", words.Mass(s.House, t.Sprinkled))
	}
	s.kilnAir(r)
	s.kiln(r)
	s.energy(r)
	if r.NotForecast == nil {
		s.indications(r)
	}
	if r.Make == vocabulary.MaltGreen {
		s.para("then", "use it, or dry it, within a day: wet it grows on, warms itself and sours")
	}
	if r.Rest != "" {
		s.para("then", "rest the malt for %s before it is used", r.Rest)
	}
}

// blown says what fans did, and what their air took.
func (s *Sheet) blown(b *outlook.Blown) {
	if b == nil {
		return
	}
	said := fmt.Sprintf("the fan runs %s and draws %s", words.Lasting(b.Fan), words.Heat(b.Energy))
	var made []string
	if !none(b.Cold) {
		made = append(made, words.Heat(b.Cold)+" of cold")
	}
	if !none(b.Heat) {
		made = append(made, words.Heat(b.Heat)+" of heat")
	}
	if len(made) > 0 {
		said += "; " + strings.Join(made, " and ") + " for its air"
	}
	if water := words.Mass(s.House, b.Sprayed); water != words.Mass(s.House, answer.Kilograms(0)) {
		said += ", " + water + " of water sprayed into it"
	}
	s.para("air", "%s", said)
}

// kiln says what the kilns drove off, and with what.
func (s *Sheet) kiln(r outlook.Result) {
	t := r.Totals
	if !(t.KilnWater > 0) {
		return
	}
	s.below(r)
	said := words.Mass(s.House, t.KilnWater) + " of water driven off"
	if !none(t.KilnHeat) {
		said += fmt.Sprintf(", %s of heat into the air", words.Heat(t.KilnHeat))
		if t.KilnWater > leastDried*t.Malt {
			said += fmt.Sprintf(", %s of water", s.HeatEach(float64(t.Energy.HeatPerWater)))
		}
	}
	if t.Energy.Recovered > 0 {
		said += ", and " + words.Heat(t.Energy.Recovered) + " recovered from the exhaust"
	}
	s.para("kiln", "%s", said)
}

// leastDried is the water, of the malt, below which heat is not told for each kg of it: a roast
// warms malt, and dries next to nothing.
const leastDried = 0.1

// malt writes what comes out of it.
func (s *Sheet) malt(r outlook.Result) {
	t := r.Totals
	if t.Rootlets == 0 && r.Make == vocabulary.MaltGreen {
		s.para("green malt", "%s at %.1f %% moisture, rootlets and all", words.Weighed(s.House, t.Malt), 100*t.FinalMoisture)
	} else if t.Rootlets == 0 {
		s.para("malt", "%s at %.1f %% moisture", words.Weighed(s.House, t.Malt), 100*t.FinalMoisture)
	} else {
		s.para("malt", "%s at %.1f %% moisture, without %s of rootlets", words.Weighed(s.House, t.Malt), 100*t.FinalMoisture, words.Weighed(s.House, t.Rootlets))
	}
	s.para("yield", "%s as is, %s of the dry matter: %s is lost", words.Percent(t.Yield), words.Percent(t.YieldDry), words.Percent(t.DryMatterLost))
}

// growth says what a count of a hundred kernels should show when the growth ends.
func (s *Sheet) growth(g *outlook.Growth, co2 answer.Kilograms) {
	if g == nil {
		return
	}
	c := g.Classes
	s.para("growth", "of 100 kernels at the end of it: %.0f not chitted; acrospire to 1/4 in %.0f, to 1/2 in %.0f, to 3/4 in %.0f, to the whole in %.0f, overgrown in %.0f; rub %s; %s of CO2 so far",
		100*c.None, 100*c.ToQuarter, 100*c.ToHalf, 100*c.ToThreeQuarters, 100*c.ToWhole, 100*c.Overgrown, g.Rub, words.Mass(s.House, co2))
}

// bed says what the heater and the cooler of the floor did.
func (s *Sheet) bed(heat, cold answer.Joules) {
	if heat > 0 {
		s.para("heater", "%s of heat given to the growing bed", words.Heat(heat))
	}
	if cold > 0 {
		s.para("cooler", "%s of heat taken out of the growing bed", words.Heat(cold))
	}
}

func ready(start time.Time, took answer.Seconds) string {
	if start.IsZero() {
		return ""
	}
	return ", until " + outlook.ClockAt(start, took).Format("Monday 2 January, 15:04")
}
