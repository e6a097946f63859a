package command

import (
	"fmt"
	"math"
	"strings"

	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/grain"
	"maltwright/sim/infer/follow"
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
	p.line("%s", p.bold(fmt.Sprintf("batch %s of %s", words.Safe(b.Name), words.Safe(p.Trial.Process.Name))))
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
	if name := s.Sight.Step; name != "" && name != where && name != string(model.HoldStep) {
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
	if kind == string(model.SoakStep) || kind == string(model.RestStep) || kind == string(model.DryStep) {
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
			p.para("late", "most likely it was so far by %s: %s. If you went on, write it down", since, words.Safe(oneLine(l.Text)))
		case follow.LateGuard:
			p.para("late", "its latest time is over since %s: %s", since, words.Safe(oneLine(l.Text)))
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
	case s < 60:
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
	name := fmt.Sprintf("%s: %s", w.Stage, words.Safe(oneLine(w.Text)))
	if w.Hold {
		name = fmt.Sprintf("%s gate: %s", w.Stage, words.Safe(oneLine(w.Text)))
	}
	lines := words.Wrap(name, 33)
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
