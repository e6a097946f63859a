package text

import (
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/lang/vocabulary"
)

// little is the share of what a process takes below which fuel or power is not told for each
// kg.
const little = 0.02

// energy says what the whole process takes, fuel and electricity apart.
func (s *Sheet) energy(t outlook.Totals) {
	e := t.Energy
	if e == nil {
		return
	}
	each := s.EnergyEach(t.Malt)
	var parts []string
	add := func(took, perTonne answer.Joules, what string) {
		if !(took > 0) { // none, or not forecast
			return
		}
		part := words.Heat(took) + " of " + what
		if took > little*(e.Fuel+e.Power) {
			part += ", " + each.Write(float64(perTonne)/1000) + " " + each.Unit + " of malt"
		}
		parts = append(parts, part)
	}
	add(e.Fuel, e.FuelPerTonne, fuel(e))
	add(e.Power, e.PowerPerTonne, "power")
	if len(parts) == 0 {
		return
	}
	s.para("energy", "%s", strings.Join(parts, "; "))
}

// fuel is what is burnt, or heat where some heater does not say how it is fired.
func fuel(e *outlook.EnergyTotals) string {
	if e.Unsaid {
		return "heat"
	}
	return "fuel"
}

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
		cooler := ""
		if b.Air.PeakCold > 0 {
			cooler = "; the cooler takes " + words.Heat(b.Air.Cold) + " out of its air, at most " + words.Power(b.Air.PeakCold)
		}
		s.para(what, "%s made by the grain, at most %s after %s, %s for each tonne of grain; %.0f %% of it leaves as vapour%s",
			words.Heat(b.Made), words.Power(b.Peak), words.Lasting(b.PeakAt), words.Power(b.PeakPerTonne), 100*b.Latent/b.Made, cooler)
	}
}
