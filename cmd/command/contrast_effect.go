package command

import (
	"context"
	"fmt"
	"math"
	"slices"

	"maltwright/check/rules"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
	"maltwright/sim/quality"
	"maltwright/sim/work"
)

// figure is one figure of two forecasts, as it is shown.
type figure struct {
	process, what string
	old, new      string // as shown; "" where there is none and no word for it
	noOld, noNew  bool   // that side has no such figure, and what is shown says so
	more          string // how much more the new one is, with its sign; may be ""
}

// measure is a figure that every forecast has.
type measure struct {
	what  string
	value func(*forecast.Totals) float64 // NaN where there is none
	show  func(float64) string
	more  func(float64) string
	none  string // what is said where there is none
}

// measures are what is told of two forecasts besides their gates.
var measures = []measure{
	{"steep-out", func(t *forecast.Totals) float64 { return t.SteepOut }, lasting, hoursMore, noSteep},
	{"moisture at steep-out", func(t *forecast.Totals) float64 { return t.SteepOutMoisture }, percentText, pointsMore, noSteep},
	{"total time", func(t *forecast.Totals) float64 { return t.Total }, lasting, hoursMore, ""},
	{"final moisture", func(t *forecast.Totals) float64 { return t.FinalMoisture }, percentText, pointsMore, ""},
	{"malt", func(t *forecast.Totals) float64 { return t.Malt }, kilograms, nil, ""},
	{"yield as is", func(t *forecast.Totals) float64 { return t.Yield }, percentText, pointsMore, ""},
	{"dry matter lost", func(t *forecast.Totals) float64 { return t.DryMatterLost }, percentText, pointsMore, ""},
	{"diastatic enzymes kept", cured(func(q quality.State) float64 { return q.Diastatic }), percentText, pointsMore, noKiln},
	{"alpha enzymes kept", cured(func(q quality.State) float64 { return q.Alpha }), percentText, pointsMore, noKiln},
	{"colour", cured(func(q quality.State) float64 { return q.Colour }), func(v float64) string { return decimals(v, 1) + " EBC" }, nil, noKiln},
	{"water for the steep", func(t *forecast.Totals) float64 { return t.SteepWater }, kilograms, nil, ""},
	{"heat of the kiln", func(t *forecast.Totals) float64 { return t.KilnEnergy }, kilowattHours, nil, ""},
}

// What is said in place of a figure of a stage that the process does not have.
const (
	noSteep = "no steep"
	noKiln  = "no kiln"
)

// cured is a figure of what the kiln does to the malt; malt that has been on none has
// no colour of its own.
func cured(of func(quality.State) float64) func(*forecast.Totals) float64 {
	return func(t *forecast.Totals) float64 {
		if t.Quality.Colour == 0 {
			return math.NaN()
		}
		return of(t.Quality)
	}
}

func hoursMore(s float64) string {
	switch h := s / 3600; {
	case math.Abs(h) >= 96:
		return more(h/24, 1, "d")
	case math.Abs(h) >= 10:
		return more(h, 0, "h")
	default:
		return more(h, 1, "h")
	}
}

func pointsMore(share float64) string { return more(100*share, 1, "points") }

// more writes a difference with its unit; it is "" where nothing is left of it.
func more(by float64, places int, unit string) string {
	if text := quantity.Signed(by, places); text != "" {
		return text + " " + unit
	}
	return ""
}

// forecasts compares the forecasts of the processes that stand on both sides: under
// one name, or the only one of each.
func (x *comparison) forecasts(ctx context.Context) {
	for _, p := range x.new.house.Processes {
		q := partner(x.old.house, p, len(x.new.house.Processes))
		if q == nil {
			continue
		}
		a, b := forecastOf(ctx, q, x.old), forecastOf(ctx, p, x.new)
		if a == nil || b == nil {
			which := x.new.name
			if a == nil {
				which = x.old.name
			}
			x.unable = append(x.unable, fmt.Sprintf("%q cannot be forecast as %s has it; see maltwright check", p.Name, which))
			continue
		}
		for _, f := range figuresOf(a, b) {
			f.process = p.Name
			x.figures = append(x.figures, f)
		}
	}
}

// forecastOf forecasts a process, or gives nil where it is not sound or not whole.
func forecastOf(ctx context.Context, p *model.Process, of season) *forecast.Forecast {
	if p.Broken {
		return nil
	}
	f, err := forecast.Run(p, forecast.Options{Meter: work.NewMeter(ctx, of.pool)})
	if err != nil || f.BrokenOff() {
		return nil
	}
	return f
}

func partner(h *model.House, p *model.Process, others int) *model.Process {
	for _, q := range h.Processes {
		if q.Name == p.Name {
			return q
		}
	}
	if len(h.Processes) == 1 && others == 1 {
		return h.Processes[0]
	}
	return nil
}

// figuresOf lists the figures that are shown differently.
func figuresOf(a, b *forecast.Forecast) []figure {
	var out []figure
	add := func(f figure) {
		if f.old != f.new {
			out = append(out, f)
		}
	}
	for _, m := range measures[:3] {
		add(m.figure(a, b))
	}
	for _, g := range gatePairs(a.Gates, b.Gates) {
		add(gateFigure(g[0], g[1]))
	}
	for _, m := range measures[3:] {
		add(m.figure(a, b))
	}
	add(nightFigure(a, b))
	return out
}

// nightFigure compares how many visits fall in the night at the best hour to begin.
func nightFigure(a, b *forecast.Forecast) figure {
	f := figure{what: "visits at night, at best", old: "-", new: "-", noOld: true, noNew: true}
	if n, ok := rules.NightVisits(a.Process, a); ok {
		f.old, f.noOld = fmt.Sprint(n), false
	}
	if n, ok := rules.NightVisits(b.Process, b); ok {
		f.new, f.noNew = fmt.Sprint(n), false
	}
	return f
}

func (m measure) figure(a, b *forecast.Forecast) figure {
	x, y := m.value(&a.Totals), m.value(&b.Totals)
	f := figure{what: m.what, old: m.none, new: m.none, noOld: known(x) == nil, noNew: known(y) == nil}
	if !f.noOld {
		f.old = m.show(x)
	}
	if !f.noNew {
		f.new = m.show(y)
	}
	if m.more != nil && !f.noOld && !f.noNew {
		f.more = m.more(y - x)
	}
	return f
}

// gatePairs matches gates: those of one stage that ask the same, in order, then
// what is left of a stage. A gate that is gone comes where it stood.
func gatePairs(a, b []forecast.Gate) [][2]*forecast.Gate {
	toOld := slices.Repeat([]int{-1}, len(b))
	taken := make([]bool, len(a))
	for _, key := range []func(*forecast.Gate) string{
		gateName,
		func(g *forecast.Gate) string { return fmt.Sprint(g.Stage, g.Hold) },
	} {
		left := map[string][]int{}
		for i := range a {
			if !taken[i] {
				left[key(&a[i])] = append(left[key(&a[i])], i)
			}
		}
		for j := range b {
			if q := left[key(&b[j])]; toOld[j] < 0 && len(q) > 0 {
				toOld[j], taken[q[0]], left[key(&b[j])] = q[0], true, q[1:]
			}
		}
	}
	var out [][2]*forecast.Gate
	i := 0
	gone := func(end int) {
		for ; i < end; i++ {
			if !taken[i] {
				out = append(out, [2]*forecast.Gate{&a[i], nil})
			}
		}
	}
	for j, k := range toOld {
		if k < 0 {
			out = append(out, [2]*forecast.Gate{nil, &b[j]})
			continue
		}
		gone(k)
		out = append(out, [2]*forecast.Gate{&a[k], &b[j]})
	}
	gone(len(a))
	return out
}

func gateFigure(a, b *forecast.Gate) figure {
	f := figure{old: gateText(a), new: gateText(b), noOld: a == nil, noNew: b == nil}
	switch {
	case b == nil:
		f.what = gateName(a)
	case a == nil || a.Text == b.Text:
		f.what = gateName(b)
	default:
		f.what = gateName(a) + " → " + b.Text
	}
	if a != nil && b != nil && a.Met && b.Met {
		f.more = hoursMore(b.Reached - a.Reached)
	}
	return f
}

func gateName(g *forecast.Gate) string {
	name := string(g.Stage)
	if g.Hold {
		name += " gate"
	}
	return name + ", " + g.Text
}

func gateText(g *forecast.Gate) string {
	switch {
	case g == nil:
		return ""
	case !g.Met:
		return "not met, " + percentText(g.Moisture)
	}
	return lasting(g.Reached) + ", " + percentText(g.Moisture)
}

// findingChange is a finding of one side only.
type findingChange struct {
	came bool
	f    finding.Finding
}

func (c findingChange) word() string {
	if c.came {
		return "came"
	}
	return "went"
}

// findingChanges tells which findings appeared and which went, by rule and words;
// where one stands in the file makes no difference.
func findingChanges(old, new []finding.Finding) []findingChange {
	key := func(f finding.Finding) string { return f.Severity.String() + f.Rule + " " + f.Message }
	count := map[string]int{}
	for _, f := range old {
		count[key(f)]++
	}
	var came, went []findingChange
	for _, f := range new {
		if count[key(f)]--; count[key(f)] < 0 {
			came = append(came, findingChange{true, f})
		}
	}
	for i := len(old) - 1; i >= 0; i-- { // of several that say the same the last have gone
		if f := old[i]; count[key(f)] > 0 {
			count[key(f)]--
			went = append([]findingChange{{false, f}}, went...)
		}
	}
	return append(went, came...)
}

// text is the finding in a line, with the place in the file of its side.
func (c findingChange) text() string {
	return words.Safe(fmt.Sprintf("%s: %s [%s]", c.f.Severity, c.f.Message, c.f.Rule))
}
