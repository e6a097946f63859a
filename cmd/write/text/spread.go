package text

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/sim/forecast"
)

// spread writes how a forecast spreads.
func (s *Sheet) spread(x *outlook.Spread) {
	if x == nil {
		return
	}
	s.line("")
	s.title(fmt.Sprintf("how sure: %d forecasts of likely lots, houses and weather", x.Members))
	t := table{columns: []tableColumn{{head: "ends after", key: true}, {head: "1 in 10", right: true, key: true}, {head: "middle", right: true, key: true}, {head: "9 in 10", right: true, key: true}, {head: "moisture %", as: "moisture %s %%"}}}
	var seldom []string
	for i, st := range x.Steps {
		if st.End.Share < always {
			seldom = append(seldom, fmt.Sprintf("%s in %s", which(x.Steps, i), words.Part(st.End.Share)))
		}
		m := st.MoistureEnd
		t.add(called(x.Steps, st), words.Lasting(st.End.P10), words.Lasting(st.End.P50), words.Lasting(st.End.P90), points(m.P10)+" "+points(m.P50)+" "+points(m.P90))
	}
	t.lay(s)
	if len(seldom) > 0 {
		rows := "its row shows those"
		if len(seldom) > 1 {
			rows = "each row shows those that have it"
		}
		s.para("", "there is %s of the forecasts; %s", strings.Join(seldom, ", and "), rows)
	}
	t = table{columns: []tableColumn{{head: "in the end", key: true}, {head: "1 in 10", right: true, key: true}, {head: "middle", right: true, key: true}, {head: "9 in 10", right: true, key: true}}}
	for _, x := range s.spreadTotals(x.Totals) {
		t.add(x.name, x.p10, x.p50, x.p90)
	}
	s.line("")
	t.lay(s)
	for _, o := range append(x.Gates, x.Expects...) {
		if o.Holds < always {
			s.para("at risk", "%s: holds in %s of the forecasts", words.Safe(o.Text), words.Part(o.Holds))
		}
	}
	s.drivers("final moisture", x.Drivers.FinalMoisture)
	s.drivers("total time", x.Drivers.Total)
}

// always is the share of the forecasts from which on something is told as of all of them.
const always = 0.995

// which says which step a row is of: of several waits, behind which step.
func which(list []outlook.StepSpread, i int) string {
	name := called(list, list[i])
	switch {
	case strings.ContainsAny(name, "0123456789"):
		return name
	case name == forecast.Waiting && i > 0:
		behind := i - 1
		for behind > 0 && list[behind].Label == forecast.Waiting {
			behind--
		}
		return fmt.Sprintf("a %s behind %s", name, called(list, list[behind]))
	}
	return "a " + name
}

// called is the label of a step, of a stage that is a step with its number where there are
// several.
func called(list []outlook.StepSpread, st outlook.StepSpread) string {
	several := slices.ContainsFunc(list, func(x outlook.StepSpread) bool { return x.Label == st.Label && x.StepName != st.StepName })
	if st.Label != st.Stage || !several {
		return st.Label
	}
	return fmt.Sprintf("%s %d", st.Label, st.Number)
}

// spreadRow is the spread of a total, in words.
type spreadRow struct{ name, p10, p50, p90 string }

// spreadTotals are the rows of those totals that any of the forecasts has.
func (s *Sheet) spreadTotals(t outlook.TotalsSpread) []spreadRow {
	mass := func(kg answer.Kilograms) string { return words.Weighed(s.House, kg) }
	var rows []spreadRow
	rows = told(rows, "steep-out", t.SteepOutMoisture, words.Percent)
	rows = told(rows, "total time", t.Total, words.Lasting)
	rows = told(rows, "final moisture", t.FinalMoisture, words.Percent)
	rows = told(rows, "malt", t.Malt, mass)
	rows = told(rows, "yield as is", t.Yield, words.Percent)
	rows = s.spreadEnergy(rows, t)
	return told(rows, "enzymes kept", t.Diastatic, words.Percent)
}

// spreadEnergy adds fuel and power, as far as there is more than a little of each.
func (s *Sheet) spreadEnergy(rows []spreadRow, t outlook.TotalsSpread) []spreadRow {
	each := s.EnergyEach(t.Malt.P50)
	say := func(perTonne answer.Joules) string { return each.Write(float64(perTonne) / 1000) }
	unit := each.Unit
	least := little * (t.FuelPerTonne.P50 + t.PowerPerTonne.P50)
	if t.FuelPerTonne.P50 > least {
		rows = told(rows, "fuel, "+unit, t.FuelPerTonne, say)
	}
	if t.PowerPerTonne.P50 > least {
		rows = told(rows, "power, "+unit, t.PowerPerTonne, say)
	}
	return rows
}

func told[T answer.Figure](rows []spreadRow, name string, x answer.Spread[T], say func(T) string) []spreadRow {
	if x.Share == 0 {
		return rows
	}
	return append(rows, spreadRow{name, say(x.P10), say(x.P50), say(x.P90)})
}

// mostDrivers is how many drivers of a figure are told.
const mostDrivers = 3

func (s *Sheet) drivers(figure string, list []outlook.Driver) {
	if len(list) == 0 {
		return
	}
	var parts []string
	for _, d := range list[:min(mostDrivers, len(list))] {
		parts = append(parts, fmt.Sprintf("%s (%s)", words.Unknown(d), words.Part(d.Share)))
	}
	first := list[0]
	s.para("driven by", "%s: %s. To know it better, %s; that could narrow the spread by up to %s.",
		figure, strings.Join(parts, ", "), s.Say(first.Learn), words.Part(1-math.Sqrt(1-float64(first.Share))))
}

// ofKiln says of which kiln something is, where there are several.
func ofKiln(name *string) string {
	if name == nil {
		return ""
	}
	return fmt.Sprintf(" of %q", words.Safe(*name))
}

// corners writes where in the bands of the site the process breaks.
func (s *Sheet) corners(list []outlook.Corner, asked outlook.Asked) {
	if list == nil {
		return
	}
	s.line("")
	s.title("the corners of the site's bands")
	broken := 0
	for _, c := range list {
		if len(c.Broken) > 0 {
			broken++
			var list []string
			for _, b := range c.Broken {
				list = append(list, s.Say(b))
			}
			s.para("breaks", "%s: %s", s.Say(c.Corner), strings.Join(list, "; "))
		}
	}
	switch nothing := len(asked.Gates) == 0 && len(asked.Expects) == 0; {
	case broken == 0 && nothing:
		s.para("", "nothing goes wrong in any of the %d; the process has no gate, and promises nothing", len(list))
	case broken == 0:
		s.para("", "every gate is met and every promise kept in all %d", len(list))
	}
}
