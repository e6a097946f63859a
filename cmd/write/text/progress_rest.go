package text

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/follow"
)

// waits are the conditions that are waited for: the next one, and those behind it.
func (s *progressSheet) waits() (first, later []progress.Wait) {
	n := min(1, len(s.r.Waits))
	return s.r.Waits[:n], s.r.Waits[n:]
}

// howLong writes how much longer conditions take.
func (s *progressSheet) howLong(title string, list []progress.Wait) {
	if len(list) == 0 {
		return
	}
	if s.narrow() {
		s.narrowWaits(title, list)
		return
	}
	t := spreads(title)
	for _, w := range list {
		s.wait(t, w)
	}
	t.lay(&s.Sheet)
	s.line("")
}

// wait adds how long a condition takes, and below it when that will be.
func (s *progressSheet) wait(t *table, w progress.Wait) {
	lines := words.Wrap(words.Awaited(w), labelWidth)
	t.add("  "+lines[0], words.Until(w.Left.P50), words.Until(w.Left.P10), words.Until(w.Left.P90))
	rest := lines[1:]
	if len(rest) == 0 {
		rest = []string{""}
	}
	clocks := []string{s.hour(w.Left.P50), s.hour(w.Left.P10), s.hour(w.Left.P90)}
	for _, l := range rest {
		t.add(append([]string{"    " + l}, clocks...)...)
		clocks = []string{"", "", ""}
	}
}

// nearlyAll is the share of the cases from which on it is not said how many they are.
const nearlyAll = 0.995

// hour is the time so long from now, "" for never.
func (s *progressSheet) hour(t answer.Seconds) string {
	if math.IsInf(float64(t), 1) {
		return ""
	}
	return s.dated(s.clock(s.r.Elapsed+t), byHour)
}

// mostDue is how many visits are told.
const mostDue = 5

// due writes what falls due next.
func (s *progressSheet) due() {
	if len(s.r.Due) == 0 {
		return
	}
	if s.r.Passed != nil {
		s.para("steep", "%s", s.Passed(*s.r.Passed))
	}
	s.line("%s", s.bold(words.Next(s.r)))
	for _, v := range s.r.Due[:min(mostDue, len(s.r.Due))] {
		s.visit(v)
	}
}

func (s *progressSheet) visit(v timetable.Visit) {
	in := "now"
	if left := v.At - s.r.Elapsed; left >= 60 {
		in = "in " + words.Ago(left)
	}
	said := []string{s.dated(v.Time, byDay), in}
	if !math.IsNaN(float64(v.Moisture)) {
		said = append(said, words.Percent(v.Moisture)+" wet")
	}
	if !math.IsNaN(float64(v.Weight)) {
		said = append(said, words.OnScale(s.House, v.Weight, v.OnScale))
	}
	var do []string
	for i, task := range v.Tasks {
		do = append(do, s.Say(task.Words))
		if i == len(v.Tasks)-1 {
			do[i] += there(v)
		}
	}
	s.item("%s: %s", strings.Join(said, ", "), strings.Join(do, "; "))
}

// steps writes the steps to come.
func (s *progressSheet) steps() {
	if len(s.r.Steps) == 0 {
		return
	}
	if s.narrow() {
		s.narrowSteps()
		return
	}
	t := table{columns: []tableColumn{{head: "the rest: ends", key: true}, {head: "middle", right: true, key: true}, {head: "1 in 10", right: true, as: "1 in 10: %s"}, {head: "9 in 10", right: true, as: "9 in 10: %s"},
		{head: "wet", right: true, key: true}, {head: "of all", right: true, as: "in %s of the cases"}}}
	for i, x := range s.r.Steps {
		if x.Label == forecast.Waiting { // it is told as what is waited for
			continue
		}
		often := ""
		if x.End.Share < nearlyAll {
			often = words.Part(x.End.Share)
		}
		day := func(t answer.Seconds) string { return s.dated(s.clock(t), byDay) }
		t.add(s.label(i), day(x.End.P50), day(x.End.P10), day(x.End.P90), words.Percent(x.MoistureEnd.P50), often)
		if on := s.stepWeights(x); on != "" {
			t.below(on)
		}
	}
	t.lay(&s.Sheet)
	s.line("")
}

// stepWeights is what a scale shows at the end of a step, where that is more than the
// drained grain.
func (s *progressSheet) stepWeights(x outlook.StepSpread) string {
	var on outlook.OnScale[answer.Kilograms]
	if x.Gross != nil {
		on.Gross = &outlook.Gross[answer.Kilograms]{In: x.Gross.In, Weight: x.Gross.Weight.P50}
	}
	if x.Bag != nil {
		on.Bag = &x.Bag.P50
	}
	if on.Gross == nil && on.Bag == nil {
		return ""
	}
	return "then " + words.OnScale(s.House, x.WeightEnd.P50, on)
}

// label is that of a step, with which of several it is, as a record names it.
func (s *progressSheet) label(i int) string {
	steps := s.r.Steps
	n, of := 0, 0
	for k, x := range steps {
		if x.Label == steps[i].Label && x.Stage == steps[i].Stage {
			if of++; k <= i {
				n++
			}
		}
	}
	x := steps[i]
	if x.Number > 0 {
		n = x.Number
	}
	if of == 1 && !(x.Label == x.Stage && n > 1) {
		return x.Label
	}
	return fmt.Sprintf("%s %d", x.Label, n)
}

// outcome writes what will come of it.
func (s *progressSheet) outcome() {
	o := s.r.Outcome
	t := spreads("what comes of it")
	if s.r.Stage == string(model.SteepStage) {
		likely(t, "steep-out moisture", o.SteepOutMoisture, words.Percent)
	}
	likely(t, "total time", o.Total, words.Lasting)
	likely(t, "final moisture", o.FinalMoisture, words.Percent)
	likely(t, "malt", o.Malt, s.mass)
	likely(t, "yield as is", o.Yield, words.Percent)
	likely(t, "diastatic enzymes kept", o.Diastatic, words.Percent)
	s.layOut(t)
	s.line("")
	if s.r.Enzymes != nil {
		s.para("enzymes", "%s", s.Enzymes(*s.r.Enzymes))
		s.line("")
	}
}

// likely adds the row of a spread that most of the forecasts have.
func likely[T answer.Figure](t *table, name string, x answer.Spread[T], write func(T) string) {
	if x.Share >= 0.5 {
		stands(t, name, &x, write)
	}
}

// posterior writes how the answer was reached.
func (s *progressSheet) posterior() {
	p := s.r.Posterior
	s.para("how sure", "%d forecasts of likely lots, houses and weather, each counting by how well it agrees with the readings; they are worth %.0f that agree well", p.Members, p.EffectiveSampleSize)
	if words.Thin(p) {
		s.para("", "%s: do not rely on the outer figures%s", cmp.Or(words.FewAgree(p), "that is few"), s.moreOf(p))
	}
}

// moreOf tells what to do about figures of few members.
func (s *progressSheet) moreOf(p progress.Posterior) (do string) {
	if s.doubted() {
		do += ", look at the readings in doubt"
	}
	if p.Members < follow.MostMembers {
		do += ", and ask for more with --members"
	}
	return do
}

// doubted tells whether a reading is in doubt.
func (s *progressSheet) doubted() bool {
	return slices.ContainsFunc(s.r.Readings, func(r progress.Reading) bool { return r.Doubt != "" })
}

// mistrust says, among the last lines, that the figures are not to be trusted, and what to do.
func (s *progressSheet) mistrust() {
	if p := s.r.Posterior; !p.Trusted {
		s.line("")
		s.para("mind", "do not trust these figures, nor the dates, which are told to the day: %s. %s", words.FewAgree(p), s.trustLater(p))
	}
}

// trustLater tells what to do about a sample that is not to be trusted: draw more, since
// that is nearly always enough where no reading is in doubt.
func (s *progressSheet) trustLater(p progress.Posterior) string {
	var do string
	if s.doubted() {
		do = "Look at the readings in doubt first. "
	}
	if p.Members < follow.MostMembers {
		more := min(1000*(p.Members/1000+1), follow.MostMembers)
		do += fmt.Sprintf("Ask for more with --members %d. If it still says this, weigh", more)
	} else {
		do += "Weigh"
	}
	return do + " and count once more: this batch may go as no forecast does"
}

// dated writes a time that was forecast: to the minute, or to the day where the figures are not to
// be trusted.
func (s *progressSheet) dated(t time.Time, layout string) string {
	if !s.r.Posterior.Trusted {
		return t.Format("Mon 2 Jan")
	}
	return t.Format(layout)
}

// factors writes what the batch says of lot and house.
func (s *progressSheet) factors() {
	var parts []string
	for _, f := range s.r.Factors {
		if x := f.Posterior; x != nil {
			parts = append(parts, fmt.Sprintf("%s %.2f (%.2f to %.2f)", f.Factor+ofKiln(f.Of), x.P50, x.P10, x.P90))
		}
	}
	if x := s.r.Thermometer; x != nil {
		step, unit := answer.Kelvin(s.Step()), "K"
		if s.Fahrenheit {
			unit = s.Degree()
		}
		parts = append(parts, fmt.Sprintf("the thermometer shows %+.1f %s (%+.1f to %+.1f)", tenth(step*x.P50), unit, tenth(step*x.P10), tenth(step*x.P90)))
	}
	beside := "the model's"
	if s.r.RelativeTo == progress.House {
		beside = "what the house has learnt"
	}
	s.para("so far", "beside %s: %s", beside, strings.Join(parts, ", "))
	for _, f := range s.r.Factors {
		if f.Edge != 0 && f.Posterior != nil {
			s.para("", "%s lies at the %s edge of the likely range, beyond which one of a hundred lies. It may really be outside, and then other figures are wrong instead: look at the readings that it goes by, and count or weigh once more; a figure that is known can stand in a house block", f.Factor+ofKiln(f.Of), edges[f.Edge])
		}
	}
}

var edges = map[int]string{-1: "lower", 1: "upper"}

// tenth rounds to a tenth, and leaves no minus before nought.
func tenth(k answer.Kelvin) float64 { return math.Round(10*float64(k))/10 + 0 }
