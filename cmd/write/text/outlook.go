package text

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"github.com/rivo/uniseg"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/sim/forecast"
)

// Outlook writes what a forecast rests on, a line each, what it takes, and last what was asked: the
// table of steps and what comes of it, on as few lines as it can. On a terminal the end of an answer
// is what is seen. It fits 80 columns, and 40.
func Outlook(w io.Writer, r outlook.Result, h words.House, o Options) error {
	s := &Sheet{House: h, Options: o}
	s.assumedLine(r.Assumed)
	s.cautionsLine(r.Cautions)
	s.takes(r)
	if s.narrow() {
		s.each(r)
	}
	s.line("")
	s.head(r.Head, r.Start)
	s.steps(r)
	s.line("")
	s.totals(r)
	s.asked(r.Asked)
	s.spread(r.Spread)
	s.corners(r.Corners, r.Asked)
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
	s.title(fmt.Sprintf("%s: %s malt from %s of %s", words.Safe(h.Process), h.Make, h.Written, words.Safe(h.Grain)))
	if !start.IsZero() {
		s.line("%s %s", begins(h.Green), start.Format(dayAndTime))
	}
}

// begins is what a batch begins with.
func begins(green bool) string {
	if green {
		return "begun"
	}
	return "first soak"
}

// steps writes the table of steps. Of each it tells when it ends, and the state of the grain then: it
// begins as the one before it ends.
func (s *Sheet) steps(r outlook.Result) {
	in := holders(r.Stages)
	t := s.tableOfSteps(r, in)
	if s.narrow() {
		t = t.without(func(i int) bool { return !t.columns[i].key })
	}
	t.lay(s)
	if len(in) > 0 && grossOf(in) == grossHead && !s.narrow() {
		s.gross(in)
	}
}

// each writes, where there is no room for it in the table, what the steps of it are: a paragraph
// for each.
func (s *Sheet) each(r outlook.Result) {
	in := holders(r.Stages)
	t := s.tableOfSteps(r, in)
	s.line("")
	for _, row := range t.rows {
		if row.cells == nil {
			s.line("%s", s.bold(row.line))
			continue
		}
		var parts []string
		for i, c := range t.columns {
			if !c.key && row.cells[i] != "" {
				parts = append(parts, inRecord(c, row.cells[i]))
			}
		}
		s.para(strings.TrimSpace(row.cells[0]), "%s", strings.Join(parts, ", "))
	}
	if len(in) > 0 {
		s.gross(in)
	}
}

// gross says what the grain is weighed in.
func (s *Sheet) gross(in []string) {
	s.para(grossHead, "the grain with what it lies in: %s", words.Safe(words.List(in)))
}

// tableOfSteps is the table of steps, whatever the room for it.
func (s *Sheet) tableOfSteps(r outlook.Result, in []string) table {
	after := tableColumn{head: "after", right: true, key: true}
	t := table{columns: []tableColumn{{head: "step", key: true}, {head: "lasts", right: true, spare: true, as: "lasts %s"}, after}}
	if !r.Start.IsZero() {
		t.columns = []tableColumn{{head: "step", key: true}, {head: "after", right: true, spare: true, as: "after %s"}, {head: "until", key: true}}
	}
	t.columns = append(t.columns, tableColumn{head: s.Degree(), as: "%s " + s.Degree()}, tableColumn{head: "wet", right: true, key: true}, tableColumn{head: "scale", right: true, key: true},
		tableColumn{head: grossOf(in), right: true, as: "gross %s"}, tableColumn{head: "the bag", right: true, as: "the bag %s"}, tableColumn{head: "ended", less: " met", as: "ended: %s"})
	for _, st := range r.Stages {
		if st.Number > 0 && (len(st.Steps) != 1 || st.Steps[0].Label != st.Stage) {
			t.between(st.Called())
		}
		for _, x := range st.Steps {
			label := x.Label
			switch {
			case label == st.Stage:
				label = st.Called()
			case st.Number > 0:
				label = "  " + label
			}
			t.add(s.stepCells(label, x, r.Start)...)
		}
	}
	return t
}

func (s *Sheet) stepCells(label string, x outlook.Step, start time.Time) []string {
	lasts := words.Lasting(x.End - x.Start)
	if x.EndedBy == string(forecast.ByTime) {
		lasts = words.Span(x.End - x.Start)
	}
	cells := []string{label, lasts, words.After(x.End)}
	if !start.IsZero() {
		cells = []string{label, words.After(x.End), clock(x, start)}
	}
	gross, bag := "", ""
	if g := x.Gross; g != nil {
		gross = words.Weighed(s.House, g.Weight)
	}
	if x.Bag != nil {
		bag = words.Bag(s.House, *x.Bag)
	}
	return append(cells, s.Given(x.Temperature, x.Given, widestBand), words.Percent(x.MoistureEnd), words.Weighed(s.House, x.WeightEnd), gross, bag, words.EndedBy(x.EndedBy))
}

// widestBand is how wide the temperature of a step is at the most: air-on 120–145.
const widestBand = 14

// widestHolder is how wide the name of a vessel is at the most that is the head of its column.
const widestHolder = 10

// holders are what the grain is weighed in, in the order of the stages.
func holders(stages []outlook.Stage) (names []string) {
	for _, st := range stages {
		for _, x := range st.Steps {
			if x.Gross != nil && !slices.Contains(names, x.Gross.In) {
				names = append(names, x.Gross.In)
			}
		}
	}
	return names
}

// grossHead stands at the head of weights with what the grain lies in: its name, where that is one and
// short.
const grossHead = "gross"

func grossOf(names []string) string {
	if len(names) == 1 && uniseg.StringWidth(words.Safe(names[0])) <= widestHolder {
		return words.Safe(names[0])
	}
	return grossHead
}

// clock is when a step ends: the day of the week and the hour, or the date where the
// step lasts so long that the day would mislead.
func clock(one outlook.Step, start time.Time) string {
	end := outlook.ClockAt(start, one.End)
	if one.End-one.Start > 6*86400 {
		return end.Format("2 Jan")
	}
	return end.Format("Mon 15:04")
}

// asked says which of what the process asks for does not come about.
func (s *Sheet) asked(a outlook.Asked) {
	s.notGiven(a.NotGiven)
	for _, g := range a.Gates {
		if g.Unjudged {
			s.para("not judged", "%s: %s is not forecast, and counts as met at once", g.Awaits(), words.Safe(g.Text))
		} else if !g.Met {
			s.para("not met", "%s: %s, %s", g.Awaits(), words.Safe(g.Text), s.Missed(g))
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

// notGiven tells each trouble once; of one that several steps have in the same words it says how
// many they are, and where they stand.
func (s *Sheet) notGiven(list []outlook.Trouble) {
	var told []string
	at := map[string][]string{}
	for _, what := range list {
		said := s.Say(what)
		if at[said] == nil {
			told = append(told, said)
		}
		where := ""
		if p := what.Of.Where(); p.Known() {
			where = words.Safe(words.OneLine(p.Text()))
		}
		at[said] = append(at[said], where)
	}
	for _, said := range told {
		of := at[said]
		if len(of) == 1 {
			s.para("not given", "%s", said)
			continue
		}
		steps := slices.DeleteFunc(slices.Compact(slices.Clone(of)), func(w string) bool { return w == "" })
		s.para("not given", "%s", words.Joined("; ", said, words.Joined(": ", fmt.Sprintf("so in %d steps", len(of)), strings.Join(steps, ", "))))
	}
}

// assumedLine says how many values a forecast takes for granted; which is told where it is asked.
func (s *Sheet) assumedLine(list []outlook.Assumption) {
	if n := len(list); n > 0 && !s.Assumed {
		s.para("assumed", "%s that the process does not say (--assumed)", words.Many(n, "value", "values"))
	}
}

func (s *Sheet) assumed(list []outlook.Assumption) {
	if len(list) == 0 || !s.Assumed {
		return
	}
	s.line("")
	s.line("%s", s.bold("assumed"))
	for _, a := range list {
		s.item("%s: %s (%s)", s.Say(a.What), s.Say(a.Value), s.Say(a.Why))
	}
}

// cautionsLine names what can hurt somebody; what to do about it is told where it is asked.
func (s *Sheet) cautionsLine(list []outlook.Caution) {
	if len(list) > 0 && !s.Cautions {
		s.para("take care", "%s", words.Hazards(list))
	}
}

// cautions closes with what can hurt somebody.
func (s *Sheet) cautions(list []outlook.Caution) {
	if len(list) == 0 || !s.Cautions {
		return
	}
	s.line("")
	s.cautionList(list)
}

func (s *Sheet) cautionList(list []outlook.Caution) {
	s.line("%s", s.bold("take care"))
	for _, c := range list {
		s.item("%s", s.Say(c))
	}
}

// Cautions writes what can hurt somebody in some processes, each once, in the order in which they are
// told: in full where the options say so, else in a line that names them.
func Cautions(w io.Writer, list []outlook.Caution, o Options) error {
	if len(list) == 0 {
		return nil
	}
	s := &Sheet{Options: o}
	slices.Sort(list)
	list = slices.Compact(list)
	if o.Cautions {
		s.cautionList(list)
	} else {
		s.cautionsLine(list)
	}
	s.line("")
	_, err := io.WriteString(w, s.String())
	return err
}
