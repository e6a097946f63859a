package command

import (
	"fmt"
	"math"
	"strings"

	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/visits"
)

// mostDue is how many visits are told.
const mostDue = 6

// doing writes what falls due next.
func (p *followSheet) doing() {
	t := timetable{f: p.Centre, start: p.began, pounds: p.pounds, fh: p.fahrenheit}
	if len(p.Due) == 0 {
		return
	}
	p.line("%s", p.bold(fmt.Sprintf("%-36s%10s%12s", "next", "wet", "scale")))
	for _, v := range p.Due[:min(mostDue, len(p.Due))] {
		p.due(t, v)
	}
	p.line("")
}

func (p *followSheet) due(t timetable, v visits.Visit) {
	left := fmt.Sprintf("  %s  %-9s", p.clockOf(v.At), p.in(v.At-p.Now))
	moist, scale := "", ""
	if !math.IsNaN(v.Moisture) {
		moist = percentText(v.Moisture)
	}
	if !math.IsNaN(v.Weight) {
		scale = p.mass(v.Weight)
	}
	p.line("%s", strings.TrimRight(fmt.Sprintf("%-36s%10s%12s", left, moist, scale), " "))
	for _, task := range v.Tasks {
		for _, l := range words.Wrap(t.say(task), p.width()-6) {
			p.line("      %s", l)
		}
	}
}

func (p *followSheet) in(s float64) string {
	if s < 60 {
		return "now"
	}
	return "in " + ago(s)
}

// rest writes the steps to come, and what will come out.
func (p *followSheet) rest() {
	if steps := p.toCome(); len(steps) > 0 {
		p.line("%s", p.bold(fmt.Sprintf("%-16s%17s%17s%17s%8s", "the rest", "middle", "1 in 10", "9 in 10", "wet")))
		for i, s := range steps {
			if s.Label == "wait" { // it is told as what is waited for
				continue
			}
			often := ""
			if s.End.Share < 0.995 {
				often = fmt.Sprintf(" %.0f%%", 100*s.End.Share)
			}
			p.line("  %-14s%17s%17s%17s%8s%s", numbered(steps, i)+" ends", p.clockOf(s.End.P50), p.clockOf(s.End.P10), p.clockOf(s.End.P90), percentText(s.Moisture.P50), often)
		}
		p.line("")
	}
	p.titles("what comes of it")
	for _, t := range totalsShown {
		if t.name == "steep-out moisture" && p.Stand.Sight.Stage != model.SteepStage {
			continue
		}
		if s := p.Ensemble.Total(t.of); s.Share > 0 {
			format := t.format
			if t.name == "malt" {
				format = p.mass
			}
			p.figures(t.name, s, format)
		}
	}
	p.line("")
}

// numbered is the label of a step, with which of several it is.
func numbered(steps []ensemble.StepSpread, i int) string {
	n, of := 0, 0
	for k, s := range steps {
		if s.Label == steps[i].Label && s.Stage == steps[i].Stage {
			if of++; k <= i {
				n++
			}
		}
	}
	if of == 1 {
		return steps[i].Label
	}
	return fmt.Sprintf("%s %d", steps[i].Label, n)
}

// toCome are the steps that end behind now, but for those of a few members only.
func (f followed) toCome() []ensemble.StepSpread {
	var steps []ensemble.StepSpread
	for _, s := range f.Ensemble.Steps() {
		if s.End.P50 > f.Now+justAhead && s.End.Share >= 0.1 && s.Stage != model.StoreStage {
			steps = append(steps, s)
		}
	}
	return steps
}

// justAhead is how near an end is to count as now, s.
const justAhead = 60.0

// readings writes which readings are in doubt.
func (p *followSheet) readings() {
	doubtful := map[int]bool{}
	for _, d := range p.Doubts {
		doubtful[d.Observation] = true
	}
	switch n, d := len(p.Judged), len(doubtful); {
	case n == 0:
		p.para("readings", "none yet: weigh the drained grain after the next soak, and write it down with note")
	case n == 1 && d == 0:
		p.para("readings", "the one that there is agrees with the forecasts")
	case d == 0:
		p.para("readings", "all %d agree with one another and with the forecasts", n)
	default:
		p.para("readings", "%d of %d agree with one another and with the forecasts", n-d, n)
	}
	for _, d := range p.Doubts {
		p.para("doubt", "%s", words.Safe(p.doubt(d)))
	}
}

// few is how many effective members are too few for the outer figures.
const few = 20

// surely writes how the answer was reached.
func (p *followSheet) surely() {
	p.para("how sure", "%d forecasts of likely lots, houses and weather, weighed by the readings: worth %.0f of equal weight%s",
		p.Members, p.EffectiveSize, redrawnWords(p.Rounds))
	if p.EffectiveSize < few {
		p.para("", "that is few: hardly any forecast agrees with the record as a whole, so trust the outer figures little, look at what is in doubt, and ask for more with --members")
	}
	var parts []string
	for _, a := range p.factors() {
		if a.name == thermometer {
			parts = append(parts, fmt.Sprintf("the thermometer shows %+.1f K (%+.1f to %+.1f)", tenth(a.P50), tenth(a.P10), tenth(a.P90)))
			continue
		}
		parts = append(parts, fmt.Sprintf("%s %.2f (%.2f to %.2f)", a.name, a.P50, a.P10, a.P90))
	}
	beside := "the model's"
	if p.Trial.Process.Learnt() != nil {
		beside = "what the house has learnt"
	}
	p.para("so far", "beside %s: %s", beside, strings.Join(parts, ", "))
}

// thermometer names the offset of the thermometer among the factors.
const thermometer = "thermometer"

// factorSpread is what is known so far of a factor of lot or house.
type factorSpread struct {
	ensemble.Spread
	name string
}

func (f followed) factors() []factorSpread {
	var out []factorSpread
	for i, a := range f.Trial.Axes {
		name := string(a.Factor)
		if a.Thermometer {
			name = thermometer
		}
		if name == "" {
			continue
		}
		list := make([]float64, len(f.Z))
		for k, z := range f.Z {
			list[k] = a.Value(z[i])
		}
		out = append(out, factorSpread{ensemble.SpreadOf(list), name})
	}
	return out
}

func redrawnWords(n int) string {
	switch n {
	case 0:
		return ""
	case 1:
		return "; drawn anew once, about those that agree"
	}
	return fmt.Sprintf("; drawn anew %d times, about those that agree", n)
}
