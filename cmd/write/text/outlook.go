package text

import (
	"fmt"
	"io"
	"math"
	"slices"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
)

// Outlook writes the table of steps, then the gates and totals, then how sure it is, what
// was assumed and what to take care of. It fits 80 columns.
func Outlook(w io.Writer, r outlook.Result, h words.House, o Options) error {
	s := &Sheet{House: h, Options: o}
	s.head(r.Head, r.Start)
	s.steps(r)
	s.asked(r.Asked)
	s.totals(r)
	s.spread(r.Spread)
	s.corners(r.Corners)
	s.assumed(r.Assumed)
	s.cautions(r.Cautions)
	_, err := io.WriteString(w, s.String())
	return err
}

// dayAndTime is how a time is written in a sentence.
const (
	day        = "Monday 2 January 2006"
	dayAndTime = "Monday 2 January 2006, 15:04"
)

// head names the process, and the time of the first soak where one is given.
func (s *Sheet) head(h outlook.Head, start time.Time) {
	s.line("%s", s.bold(fmt.Sprintf("%s: %s malt from %s of %s", words.Safe(h.Process), h.Make, h.Written, words.Safe(h.Grain))))
	if !start.IsZero() {
		s.line("%s %s", begins(h.Green), start.Format(dayAndTime))
	}
	s.line("")
}

// begins is what a batch begins with.
func begins(green bool) string {
	if green {
		return "begun"
	}
	return "first soak"
}

// stepColumns are those of the table of steps; with clock times it takes 80 columns, and
// without 73.
func (s *Sheet) stepColumns(clock, numbered, warm bool) []column {
	if !clock {
		return []column{{"step", 12, 0, false}, {"from", 9, 1, true}, {"to", 9, 1, true},
			{s.Degree(), 14, 2, false}, {"moisture %", 11, 2, false}, {"scale", 8, 1, true}, {"ended", 5, 2, false}}
	}
	step, gap, band := 10, 2, 12
	switch {
	case numbered: // germinate 2 takes one of the gap before the hour
		step, gap = 11, 1
	case warm: // air-on 120–145 takes one of the step and one of the gap
		step, gap, band = 9, 1, 14
	}
	return []column{{"step", step, 0, false}, {"from", 9, 0, true}, {"to", 9, 1, true}, {"until", 9, gap, false},
		{s.Degree(), band, 1, false}, {"moisture %", 11, 1, false}, {"scale", 8, 1, true}, {"ended", 5, 1, false}}
}

func (s *Sheet) steps(r outlook.Result) {
	numbered := slices.ContainsFunc(r.Stages, func(st outlook.Stage) bool {
		return st.Number > 0 && slices.ContainsFunc(st.Steps, func(one outlook.Step) bool { return one.Label == st.Stage })
	})
	warm := slices.ContainsFunc(r.Stages, func(st outlook.Stage) bool {
		return slices.ContainsFunc(st.Steps, func(one outlook.Step) bool { return one.Given != nil || len([]rune(s.Band(one.Temperature))) > 12 })
	})
	columns := s.stepColumns(!r.Start.IsZero(), numbered, warm)
	s.heads(columns)
	wide, scale := upTo(columns, "scale")
	for _, st := range r.Stages {
		if len(st.Steps) != 1 || st.Steps[0].Label != st.Stage {
			s.line("%s", s.bold(st.Called()))
		}
		for _, one := range st.Steps {
			label := "  " + one.Label
			if one.Label == st.Stage {
				label = st.Called()
			}
			s.row(columns, s.stepCells(label, one, r.Start, columns))
			for _, line := range s.onScale(one.OnScale, wide, scale.width) {
				s.line("%s", line)
			}
		}
	}
	s.line("")
}

func (s *Sheet) stepCells(label string, one outlook.Step, start time.Time, columns []column) []string {
	cells := []string{label, words.Elapsed(one.Start), words.Elapsed(one.End)}
	if !start.IsZero() {
		cells = append(cells, clock(one, start))
	}
	return append(cells, s.Given(one.Temperature, one.Given, columns[len(cells)].width),
		points(one.MoistureStart)+" → "+points(one.MoistureEnd), words.Weighed(s.House, one.WeightEnd), one.EndedBy)
}

// clock is when a step ends: the day of the week and the hour, or the date where the
// step lasts so long that the day would mislead.
func clock(one outlook.Step, start time.Time) string {
	end := outlook.ClockAt(start, answer.Seconds(60*math.Round(float64(one.End)/60))) // to the minute, as elapsed
	if one.End-one.Start > 6*86400 {
		return end.Format("2 Jan")
	}
	return end.Format("Mon 15:04")
}

// asked says which of what the process asks for does not come about.
func (s *Sheet) asked(a outlook.Asked) {
	for _, what := range a.NotGiven {
		s.para("not given", "%s", s.Say(what))
	}
	for _, g := range a.Gates {
		if g.Unjudged {
			s.para("not judged", "%s: %s: it is not forecast, and is taken as met at once", g.Called(), words.Safe(g.Text))
		} else if !g.Met {
			s.para("not met", "%s: %s, %s", g.Called(), words.Safe(g.Text), s.short(g))
		}
	}
	for _, e := range a.Expects {
		if e.Unjudged {
			s.para("not judged", "expect %s: it is not forecast", words.Safe(e.Text))
		} else if !e.Holds && e.Forecast != nil {
			s.para("broken", "expect %s: the forecast gives %s", words.Safe(e.Text), s.Say(*e.Forecast))
		}
	}
}

// short says by how much a gate was missed and how much longer it would take.
func (s *Sheet) short(g outlook.Gate) string {
	out := "not after " + words.Lasting(g.Waited)
	if g.Measured != nil {
		out = fmt.Sprintf("%s %s after %s", g.Measure, s.Say(*g.Measured), words.Lasting(g.Waited))
	}
	switch {
	case g.Never:
		out += "; it does not come about like this"
	case !math.IsNaN(float64(g.Needs)):
		out += fmt.Sprintf("; it would take %s more", words.Lasting(g.Needs))
	}
	return out
}

func (s *Sheet) assumed(list []outlook.Assumption) {
	if len(list) == 0 {
		return
	}
	s.line("")
	s.line("%s", s.bold("assumed"))
	for _, a := range list {
		s.para("", "%s: %s (%s)", s.Say(a.What), s.Say(a.Value), s.Say(a.Why))
	}
}

// cautions closes with what can hurt somebody.
func (s *Sheet) cautions(list []outlook.Caution) {
	if len(list) == 0 {
		return
	}
	s.line("")
	s.line("%s", s.bold("take care"))
	for _, c := range list {
		s.para("", "%s", s.Say(c))
	}
}
