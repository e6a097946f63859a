package command

import (
	"fmt"
	"math"
	"strings"
	"time"

	"github.com/rivo/uniseg"

	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/grain"
)

// writeForecastText writes the table of steps, then the gates and totals, then
// what was assumed and what to take care of. It fits 80 columns.
func writeForecastText(w *World, f *forecast.Forecast, more sure, start *time.Time) error {
	p := sheet{World: w, start: start}
	p.pounds, p.fahrenheit = shownIn(f.Process)
	p.head(f)
	p.steps(f)
	p.gates(f)
	p.totals(f)
	p.spreadOut(more.spread)
	p.corners(more.corners)
	p.assumed(f)
	p.cautions(f)
	_, err := fmt.Fprint(w.Out, p.b.String())
	return err
}

type sheet struct {
	*World
	start *time.Time
	b     strings.Builder

	pounds, fahrenheit bool // the units in which it is shown
}

func (p *sheet) line(format string, args ...any) { fmt.Fprintf(&p.b, format+"\n", args...) }

func (p *sheet) bold(text string) string {
	if p.colour() {
		return "\x1b[1m" + text + "\x1b[0m"
	}
	return text
}

// column is one column of the table of steps.
type column struct {
	head  string
	width int // without the gap
	gap   int // spaces in front
	right bool
}

// columns are those of the table; with clock times it takes 80 columns, and
// without 73.
func (p *sheet) columns() []column {
	if p.start == nil {
		return []column{{"step", 12, 0, false}, {"from", 9, 1, true}, {"to", 9, 1, true},
			{p.degree(), 14, 2, false}, {"moisture %", 11, 2, false}, {"scale", 8, 1, true}, {"ended", 5, 2, false}}
	}
	return []column{{"step", 10, 0, false}, {"from", 9, 0, true}, {"to", 9, 1, true}, {"until", 9, 2, false},
		{p.degree(), 12, 1, false}, {"moisture %", 11, 1, false}, {"scale", 8, 1, true}, {"ended", 5, 1, false}}
}

func (p *sheet) head(f *forecast.Forecast) {
	what := words.Safe(f.Process.Name)
	if c, g := f.Process.Charge, f.Process.Grain; c != nil && g != nil {
		what += fmt.Sprintf(": %s malt from %s of %s", f.Process.Make.Text, c, words.Safe(g.Name))
	}
	p.line("%s", p.bold(what))
	if p.start != nil {
		p.line("first soak %s", p.start.Format("Monday 2 January 2006, 15:04"))
	}
	p.line("")
}

func (p *sheet) steps(f *forecast.Forecast) {
	cols := p.columns()
	heads := make([]string, len(cols))
	for i, c := range cols {
		heads[i] = c.head
	}
	p.row(cols, heads)
	for _, st := range f.Stages {
		if len(st.Steps) != 1 || st.Steps[0].Label != string(st.Kind) {
			p.line("%s", p.bold(string(st.Kind)))
		}
		for _, s := range st.Steps {
			label := "  " + s.Label
			if s.Label == string(st.Kind) {
				label = s.Label
			}
			p.row(cols, p.cells(label, s))
		}
	}
	p.line("")
}

func (p *sheet) cells(label string, s forecast.Step) []string {
	cells := []string{label, elapsed(s.Start), elapsed(s.End)}
	if p.start != nil {
		cells = append(cells, p.clock(s))
	}
	return append(cells, p.warmth(s.Temperature),
		fmt.Sprintf("%.1f → %.1f", 100*s.MoistureStart, 100*s.MoistureEnd), p.mass(s.WeightEnd), string(s.EndedBy))
}

// clock is when a step ends: the day of the week and the hour, or the date where
// the step lasts so long that the day would mislead.
func (p *sheet) clock(s forecast.Step) string {
	end := clockAt(*p.start, 60*math.Round(s.End/60)) // to the minute, as elapsed
	if s.End-s.Start > 6*86400 {
		return end.Format("2 Jan")
	}
	return end.Format("Mon 15:04")
}

func (p *sheet) row(cols []column, cells []string) {
	var b strings.Builder
	for i, c := range cols {
		pad := strings.Repeat(" ", max(0, c.width-uniseg.StringWidth(cells[i])))
		b.WriteString(strings.Repeat(" ", c.gap))
		if c.right {
			b.WriteString(pad + cells[i])
		} else {
			b.WriteString(cells[i] + pad)
		}
	}
	p.line("%s", strings.TrimRight(b.String(), " "))
}

// elapsed writes a time from the first soak: 7:00, or 2d 13:20.
func elapsed(s float64) string {
	if known(s) == nil {
		return noFigure
	}
	m := int(math.Round(s / 60))
	if d := m / 1440; d > 0 {
		return fmt.Sprintf("%dd %02d:%02d", d, m/60%24, m%60)
	}
	return fmt.Sprintf("%d:%02d", m/60, m%60)
}

// lasting writes a length of time for a sentence: 9.5 h, 6 d 4 h.
func lasting(s float64) string {
	if known(s) == nil {
		return noFigure
	}
	if h := s / 3600; h < 48 {
		return fmt.Sprintf("%.1f h", h)
	}
	h := int(math.Round(s / 3600))
	return fmt.Sprintf("%d d %d h", h/24, h%24)
}

// kilograms writes a weight to three figures, in grams below a kilogram.
func kilograms(m float64) string {
	switch {
	case m < 1:
		return fmt.Sprintf("%.0f g", 1000*m)
	case m < 10:
		return fmt.Sprintf("%.2f kg", m)
	case m < 100:
		return fmt.Sprintf("%.1f kg", m)
	}
	return fmt.Sprintf("%.0f kg", m)
}

// litres writes an amount of water, a litre of which weighs a kilogram.
func litres(kg float64) string {
	switch {
	case kg < 0.1:
		return fmt.Sprintf("%.0f ml", 1000*kg)
	case kg < 100:
		return fmt.Sprintf("%.1f l", kg)
	}
	return fmt.Sprintf("%.0f l", kg)
}

const joulesPerKWh = 3.6e6

func kilowattHours(j float64) string {
	switch k := j / joulesPerKWh; {
	case k < 0.1:
		return fmt.Sprintf("%.0f Wh", 1000*k)
	case k < 100:
		return fmt.Sprintf("%.1f kWh", k)
	default:
		return fmt.Sprintf("%.0f kWh", k)
	}
}

func (p *sheet) gates(f *forecast.Forecast) {
	for _, t := range f.Trouble {
		if t.Kind == forecast.KilnShort {
			p.para("not given", "%s", words.Safe(t.Detail))
		}
	}
	for _, g := range f.Gates {
		if g.Met {
			continue
		}
		p.para("not met", "%s: %s, %s", g.Stage, words.Safe(g.Text), gateShort(g))
	}
	for _, e := range f.Expects {
		if !e.Holds {
			p.para("broken", "expect %s: the forecast gives %s", words.Safe(e.Test.Place.Text()), e.Test.Bound.Range.Low.Like(e.Value))
		}
	}
}

// gateShort says by how much a gate was missed and how much longer it would take.
func gateShort(g forecast.Gate) string {
	out := fmt.Sprintf("not after %s", lasting(g.Waited))
	if g.Failed != nil && g.Failed.Bound != nil {
		out = fmt.Sprintf("%s %s after %s", g.Failed.Measure, g.Failed.Bound.Range.Low.Like(g.Measured), lasting(g.Waited))
	}
	switch {
	case !g.Searching:
	case math.IsNaN(g.Needs):
		out += "; it does not come about like this"
	default:
		out += fmt.Sprintf("; it would take %s more", lasting(g.Needs))
	}
	return out
}

// broke says where the forecast broke off, and tells whether it did.
func (p *sheet) broke(f *forecast.Forecast) bool {
	for _, t := range f.Trouble {
		if t.Kind == forecast.NotForecast {
			p.para("broken off", "%s", words.Safe(t.Detail))
			return true
		}
	}
	return false
}

func (p *sheet) totals(f *forecast.Forecast) {
	t := f.Totals
	if !math.IsNaN(t.SteepOut) {
		p.para("steep-out", "after %s at %.1f %% moisture, with %s of water drawn", lasting(t.SteepOut), 100*t.SteepOutMoisture, litres(t.SteepWater))
	}
	if p.broke(f) {
		return
	}
	p.growth(f)
	p.para("total time", "%s%s", lasting(t.Total), p.ready(t.Total))
	p.para("malt", "%s at %.1f %% moisture, without %s of rootlets", p.mass(t.Malt), 100*t.FinalMoisture, p.mass(t.Rootlets))
	p.para("yield", "%s as is, %s of the dry matter: %s is lost", percentText(t.Yield), percentText(t.YieldDry), percentText(t.DryMatterLost))
	if t.KilnWater > 0 {
		p.para("kiln", "%s of water driven off, %s of heat into the air, %.1f kWh for each kg of malt", p.mass(t.KilnWater), kilowattHours(t.KilnEnergy), t.KilnEnergy/joulesPerKWh/t.Malt)
	}
	if q := t.Quality; q.Colour > 0 {
		p.para("indications", "enzymes kept %.0f %% (diastatic) and %.0f %% (alpha), DMS precursor left %.0f %%, colour about %.1f EBC; calibrated to practice, no laboratory values",
			100*q.Diastatic, 100*q.Alpha, 100*q.Precursor, q.Colour)
	}
	if st := model.First[*model.Storing](f.Process); st != nil && st.Rest != nil {
		p.para("then", "rest the malt for %s before it is used", st.Rest)
	}
}

// growth says what a count of a hundred corns should show when the growth ends.
func (p *sheet) growth(f *forecast.Forecast) {
	for i := len(f.Pieces) - 1; i >= 0; i-- {
		g := f.Pieces[i]
		if g.Stage != model.GerminateStage {
			continue
		}
		c := g.Classes
		p.para("growth", "of 100 corns at the end of it: %.0f not chitted; acrospire to 1/4 in %.0f, to 1/2 in %.0f, to 3/4 in %.0f, to the whole in %.0f, overgrown in %.0f; rub %s; %s of CO2 so far",
			100*c[grain.NoGrowth], 100*c[grain.ToQuarter], 100*c[grain.ToHalf], 100*c[grain.ToThreeQuarters], 100*c[grain.ToFull], 100*c[grain.Overgrown], g.Rub, p.mass(f.Totals.CO2))
		return
	}
}

func (p *sheet) ready(s float64) string {
	if p.start == nil {
		return ""
	}
	return ", until " + clockAt(*p.start, s).Format("Monday 2 January, 15:04")
}

func (p *sheet) para(label, format string, args ...any) {
	const indent = 14
	for i, line := range words.Wrap(fmt.Sprintf(format, args...), p.width()-indent) {
		if i > 0 {
			label = ""
		}
		p.line("%-*s%s", indent, label, line)
	}
}

func (p *sheet) assumed(f *forecast.Forecast) {
	if len(f.Assumed) == 0 {
		return
	}
	p.line("")
	p.line("%s", p.bold("assumed"))
	for _, a := range f.Assumed {
		p.para("", "%s: %s (%s)", a.What, a.Value, a.Why)
	}
}

// cautions closes a forecast with what can hurt somebody in it.
func (p *sheet) cautions(f *forecast.Forecast) {
	list := forecast.Cautions(f.Process)
	if len(list) == 0 {
		return
	}
	p.line("")
	p.line("%s", p.bold("take care"))
	for _, c := range list {
		p.para("", "%s", c)
	}
}
