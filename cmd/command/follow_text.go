package command

import (
	"fmt"
	"math"
	"strings"

	"maltwright/check/report"
	"maltwright/lang/process"
	"maltwright/sim/ensemble"
	"maltwright/sim/follow"
	"maltwright/sim/grain"
	"maltwright/sim/visits"
)

const soon = "Mon 2 Jan 15:04"

// writeFollowText writes how a batch stands. It fits 80 columns.
func writeFollowText(w *World, f followed) error {
	p := followSheet{sheet: sheet{World: w, start: &f.began}, followed: f}
	p.pounds, p.fahrenheit = shownIn(f.Trial.Process)
	p.header()
	p.standing()
	p.lates()
	p.waiting()
	p.doing()
	p.rest()
	p.readings()
	p.line("")
	p.surely()
	p.sheet.cautions(f.Centre)
	_, err := fmt.Fprint(w.Out, p.b.String())
	return err
}

type followSheet struct {
	sheet
	followed
}

func (p *followSheet) header() {
	b := p.Trial.Batch
	p.line("%s", p.bold(fmt.Sprintf("batch %s of %s", report.Safe(b.Name), report.Safe(p.Trial.Process.Name))))
	p.line("as of %s, %s after the first soak", p.at.Format(minute), lasting(p.Now))
	if p.note != "" {
		p.para("", "that is %s", p.note)
	}
	switch n := len(p.Ignored); n {
	case 0:
	case 1:
		p.para("", "one reading is of a later time, and does not count")
	default:
		p.para("", "%d readings are of a later time, and do not count", n)
	}
	p.line("")
}

func (p *followSheet) clockOf(s float64) string { return clockAt(p.began, s).Format(soon) }

// figures writes one row of a middle and its two points.
func (p *followSheet) figures(name string, s ensemble.Spread, format func(float64) string) {
	if s.Share >= 0.5 {
		p.line("  %-34s%10s%12s%12s", name, format(s.P50), format(s.P10), format(s.P90))
	}
}

func (p *followSheet) titles(what string) {
	p.line("%s", p.bold(fmt.Sprintf("%-36s%10s%12s%12s", what, "middle", "1 in 10", "9 in 10")))
}

func (p *followSheet) degreesOf(c float64) string {
	if p.fahrenheit {
		return fmt.Sprintf("%.0f °F", fahrenheitOf(c))
	}
	return fmt.Sprintf("%.1f °C", c)
}

// standing writes the state now.
func (p *followSheet) standing() {
	s := p.Stand
	where := string(s.Sight.Stage)
	if name := s.Sight.Step; name != "" && name != where && name != string(process.Hold) {
		where = fmt.Sprintf("%s, %s", where, stepName(name, s.Sight.Number))
	}
	switch {
	case p.Over():
		p.titles("it is over")
	default:
		p.titles("now: " + where)
	}
	p.figures("moisture", s.Moisture, percentText)
	p.figures("weight on the scale", s.Weight, p.mass)
	p.figures("dry matter lost so far", s.Lost, percentText)
	if s.Sight.Growing {
		p.figures("corns chitted", s.Chit, percentText)
		p.figures("acrospire, as a part of the corn", s.Acrospire, func(v float64) string { return fmt.Sprintf("%.2f", v) })
		if s.Modification.P50 > 0 {
			p.figures("rub", s.Modification, func(v float64) string { return grain.RubAt(v).String() })
		}
	}
	p.figures("in the middle of the bed", s.Bed, p.degreesOf)
	p.figures("air-off", s.AirOff, p.degreesOf)
	p.figures("the malt itself", s.Malt, p.degreesOf)
	p.line("")
}

// stepName is soak 2, dry 1, but plain cure where there is only one.
func stepName(kind string, n int) string {
	if kind == string(process.Soak) || kind == string(process.Rest) || kind == string(process.Dry) {
		return fmt.Sprintf("%s %d", kind, n)
	}
	return kind
}

// lates writes what should have been done.
func (p *followSheet) lates() {
	for _, l := range p.Late {
		since := fmt.Sprintf("%s, %s ago", p.clockOf(l.Since), ago(p.Now-l.Since))
		switch l.Kind {
		case follow.LateStep:
			p.para("late", "most likely it was so far by %s: %s. If you went on, write it down", since, report.Safe(oneLine(l.Text)))
		case follow.LateGuard:
			p.para("late", "its latest time is over since %s: %s", since, report.Safe(oneLine(l.Text)))
		case follow.LateTurn:
			p.para("late", "by the last turn that is written down, the next fell due on %s", since)
		}
	}
	if len(p.Late) > 0 {
		p.line("")
	}
}

func ago(s float64) string {
	switch t := span(s); {
	case t == "":
		return "less than a minute"
	case s > 36*3600:
		return lasting(s)
	default:
		return t
	}
}

// tenth rounds to a tenth, and leaves no minus before nought.
func tenth(v float64) float64 { return math.Round(10*v)/10 + 0 }

// waiting writes how much longer conditions take.
func (p *followSheet) waiting() {
	if len(p.Waits) == 0 {
		return
	}
	p.titles("how much longer")
	for _, w := range p.Waits {
		p.wait(w)
	}
	p.line("")
}

func (p *followSheet) wait(w follow.Wait) {
	name := fmt.Sprintf("%s: %s", w.Stage, report.Safe(oneLine(w.Text)))
	if w.Hold {
		name = fmt.Sprintf("%s gate: %s", w.Stage, report.Safe(oneLine(w.Text)))
	}
	lines := report.Wrap(name, 33)
	p.line("  %-34s%10s%12s%12s", lines[0], p.left(w.Left.P50), p.left(w.Left.P10), p.left(w.Left.P90))
	rest := lines[1:]
	clocks := fmt.Sprintf("%10s%12s%12s", p.short(w.Left.P50), p.short(w.Left.P10), p.short(w.Left.P90))
	if len(rest) == 0 {
		rest = []string{""}
	}
	for i, l := range rest {
		if i > 0 {
			clocks = ""
		}
		p.line("%s", strings.TrimRight(fmt.Sprintf("    %-32s%s", l, clocks), " "))
	}
	if w.Share < 0.995 {
		p.line("    in %.0f of 100 cases", 100*w.Share)
	}
}

// left is how long it takes yet.
func (p *followSheet) left(s float64) string {
	switch {
	case s > follow.Never:
		return "never"
	case s < 60:
		return "now"
	case s < 36*3600:
		return fmt.Sprintf("%d:%02d h", int(s/3600), int(s/60)%60)
	}
	return fmt.Sprintf("%.1f d", s/86400)
}

func (p *followSheet) short(s float64) string {
	if s > follow.Never {
		return ""
	}
	return clockAt(p.began, p.Now+s).Format("Mon 15:04")
}

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
		for _, l := range report.Wrap(t.say(task), p.width()-6) {
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
		if t.name == "steep-out moisture" && p.Stand.Sight.Stage != process.Steep {
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
		if s.End.P50 > f.Now+justAhead && s.End.Share >= 0.1 && s.Stage != process.Store {
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
		doubtful[d.Item] = true
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
		p.para("doubt", "%s", report.Safe(p.doubt(d)))
	}
}

// few is how many effective members are too few for the outer figures.
const few = 20

// surely writes how the answer was reached.
func (p *followSheet) surely() {
	p.para("how sure", "%d forecasts of likely lots, houses and weather, weighed by the readings: worth %.0f of equal weight%s",
		p.Members, p.Effective, redrawnWords(p.Redrawn))
	if p.Effective < few {
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
