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

// takes writes what the batch takes, what is done for it, and what is known of the malt beside its weight:
// water, growth, heat, air and energy.
func (s *Sheet) takes(r outlook.Result) {
	t := r.Totals
	if !math.IsNaN(float64(t.SteepOut)) {
		s.para("steep-out", "after %s at %s moisture, with %s of water drawn", words.Lasting(t.SteepOut), words.Percent(t.SteepOutMoisture), s.Water(float64(t.SteepWater)))
	}
	if r.BrokenOff != nil {
		return
	}
	s.growth(r.Growth)
	if r.Growth != nil && t.CO2 > 0 {
		s.para("CO2", "%s given off until the grain goes to the kiln", words.Mass(s.House, t.CO2))
	}
	s.bed(t.BedHeat, t.BedCold)
	s.blown(t.Blown)
	s.beds(r)
	if t.Sprinkled > 0 {
		s.para("sprinkled", "%s of water", words.Mass(s.House, t.Sprinkled))
	}
	s.kilnAir(r)
	s.kiln(r)
	s.energy(r)
	if t.Rootlets > 0 && r.NotForecast == nil && r.NoMalt == nil {
		s.para("rootlets", "%s", words.Weighed(s.House, t.Rootlets))
	}
	if r.NotForecast == nil {
		s.indications(r)
		if s.narrow() {
			s.enzymes(r)
		}
	}
}

// totals writes what comes of the batch, or where the forecast broke off.
func (s *Sheet) totals(r outlook.Result) {
	t := r.Totals
	if b := r.BrokenOff; b != nil {
		s.para("broken off", "%s", s.Say(b.Why))
		return
	}
	s.para("total time", "%s%s%s", words.Lasting(t.Total), ready(r.Start, t.Total), rests(r))
	switch {
	case s.ends(r.NotForecast):
	case r.NoMalt != nil:
		s.para("no malt", "%s", words.NoMalt(*r.NoMalt, r.Green))
	default:
		s.malt(r)
	}
	if r.NotForecast == nil && !s.narrow() { // where there is little room, above
		s.enzymes(r)
	}
	if r.Make == vocabulary.MaltGreen {
		s.para("then", "use it, or dry it, within a day: wet malt grows on, warms itself and sours")
	}
}

// rests says how long the malt is to rest.
func rests(r outlook.Result) string {
	if r.Rest == "" {
		return ""
	}
	return "; then rest " + r.Rest
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
	what, whole := "malt", ""
	if t.Rootlets == 0 && r.Make == vocabulary.MaltGreen {
		what, whole = "green malt", ", rootlets and all"
	}
	s.para(what, "%s at %s moisture%s; yield %s, of the dry matter %s", words.Weighed(s.House, t.Malt), words.Percent(t.FinalMoisture), whole, words.Percent(t.Yield), words.Percent(t.YieldDry))
}

// growth says what a count of the kernels should show when the growth ends.
func (s *Sheet) growth(g *outlook.Growth) {
	if g == nil {
		return
	}
	c := g.Classes
	var parts []string
	for _, class := range []struct {
		form string
		of   answer.Share
	}{{"to 1/4 in %s", c.ToQuarter}, {"to 1/2 in %s", c.ToHalf}, {"to 3/4 in %s", c.ToThreeQuarters}, {"whole in %s", c.ToWhole}, {"overgrown in %s", c.Overgrown}} {
		if class.of >= leastClass {
			parts = append(parts, fmt.Sprintf(class.form, words.Part(class.of)))
		}
	}
	said := "acrospire " + strings.Join(parts, ", ") + "; "
	if len(parts) == 0 {
		said = ""
	}
	s.para("growth", "%s%s of the kernels not chitted; rub %s", said, words.Part(c.None), g.Rub)
}

// leastClass is the share of the kernels below which a class of their acrospires is not told: a count
// of a hundred does not show it.
const leastClass = 0.005

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
	return ", until " + outlook.ClockAt(start, took).Format("Mon 2 January, 15:04")
}
