package text

import (
	"fmt"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/lang/vocabulary"
)

// little is the share of what a process takes below which fuel or power is not told for each
// kg.
const little = 0.02

// leastEach, J, is 0.1 kWh: of less no figure for each kg is told.
const leastEach = 3.6e5

// energy says what the whole process takes: what is burnt for the kiln and for the rest, and
// electricity.
func (s *Sheet) energy(r outlook.Result) {
	e := r.Totals.Energy
	if e == nil {
		return
	}
	each := s.EnergyEach(r.Totals.Malt)
	var parts []string
	add := func(took answer.Joules, what string) {
		if !(took > 0) || none(took) { // or not forecast
			return
		}
		part := words.Heat(took) + " of " + what
		if took > little*(e.Fuel+e.Power) && took > leastEach && r.NoMalt == nil {
			part += ", " + each.Write(float64(took/answer.Joules(r.Totals.Malt))) + " " + each.Unit + " of malt"
		}
		parts = append(parts, part)
	}
	kiln, beds := burnt(r.Stages)
	if none(beds.Fuel) {
		add(kiln.Fuel, fuel(kiln))
	} else {
		add(kiln.Fuel, fuel(kiln)+" for the kiln")
		add(beds.Fuel, fuel(beds)+" for the bed")
	}
	add(e.Power, "power")
	if len(parts) == 0 {
		return
	}
	s.para("energy", "%s", strings.Join(parts, "; "))
}

// burnt adds up what kilns take, and what everything else does.
func burnt(stages []outlook.Stage) (kiln, beds outlook.Energy) {
	for _, st := range stages {
		if st.Energy == nil {
			continue
		}
		into := &beds
		if st.Stage == vocabulary.VerbKiln {
			into = &kiln
		}
		into.Fuel += st.Energy.Fuel
		into.Unsaid = into.Unsaid || st.Energy.Unsaid
	}
	return kiln, beds
}

// fuel is what is burnt, or heat where some heater does not say how it is fired.
func fuel(e outlook.Energy) string {
	if e.Unsaid {
		return "heat"
	}
	return "fuel"
}

// none tells whether so much heat is shown as nought.
func none(j answer.Joules) bool { return words.Heat(j) == words.Heat(answer.Joules(0)) }

// beds says what has to be carried off the growing beds that air is blown through.
func (s *Sheet) beds(r outlook.Result) {
	for _, st := range r.Stages {
		b := st.Bed
		if b == nil || b.Air == nil || st.Stage != vocabulary.VerbGerminate {
			continue
		}
		what := "bed heat"
		if st.Number > 0 {
			what += " of " + st.Called()
		}
		s.para(what, "%s made by the grain, at most %s after %s, %s of grain; %.0f %% of it leaves as vapour%s",
			words.Heat(b.Made), words.Power(b.Peak), words.Lasting(b.PeakAt), s.PowerEach(b.PeakPerTonne), 100*b.Latent/b.Made, s.cooler(b.Air))
	}
}

// cooler says what a cooler takes, and in what air: it has to be bought for the warmest.
func (s *Sheet) cooler(a *outlook.AirHeat) string {
	said := ""
	if a.Outside != nil && !none(a.Cold) {
		said = fmt.Sprintf("; the cooler takes %s out of its air, at most %s in air of %s", words.Heat(a.Cold), words.Power(a.PeakCold), s.Degrees(float64(*a.Outside), 0))
	}
	w := a.Warmest
	switch {
	case w == nil || w.PeakCold < slightCold:
		return said
	case said == "":
		return fmt.Sprintf("; in the warmest air of the site, %s, the cooler takes at most %s", s.Degrees(float64(w.Air), 0), words.Power(w.PeakCold))
	}
	return said + fmt.Sprintf(", and %s in the warmest of the site, %s", words.Power(w.PeakCold), s.Degrees(float64(w.Air), 0))
}

// slightCold is what no cooler is bought for, W.
const slightCold = 10.0
