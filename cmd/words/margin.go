package words

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/effect"
	"maltwright/cmd/answer/noted"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/finding"
	"maltwright/sim/forecast"
)

// What stands in the margin of a file is short: a line of it is read beside the line that it is about, and
// the whole is told to who asks.

// shortDay is a time in the margin.
const shortDay = "Mon 2 Jan 15:04"

// brokenOff is what ended a step in which the forecast could not go on.
const brokenOff = string(forecast.BrokenOff)

// marginTime is when something is over in the margin: by the clock where it is known, else after the first soak.
func marginTime(s answer.Seconds, at time.Time) string {
	if at.IsZero() {
		return "after " + After(s)
	}
	return at.Format(shortDay)
}

// MarginEnd says when a step is over, and what moisture and weight there is then: after 2 d 7 h, 44.1 %, 8.42 kg. Of a
// step that is done several times it is the last of so many.
func (h House) MarginEnd(s outlook.Step, times int) string {
	when := marginTime(s.End, s.EndTime)
	switch {
	case s.EndedBy == brokenOff:
		return "breaks off " + when
	case times > 1 && s.EndTime.IsZero():
		when = fmt.Sprintf("%d×: %s", times, After(s.End))
	case times > 1:
		when = fmt.Sprintf("%d×: %s", times, when)
	}
	return when + ", " + Percent(s.MoistureEnd) + ", " + Weighed(h, s.WeightEnd)
}

// Ended says of a step when it is over, and what the grain then is, in whole.
func (h House) Ended(s outlook.Step, green bool) string {
	said := s.Label
	if set := h.Setting(s.Temperature); set != "" {
		said += " (" + set + ")"
	}
	verb := "is over"
	if s.EndedBy == brokenOff {
		verb = "breaks off"
	}
	said += fmt.Sprintf(" %s %s after %s", verb, After(s.End), Beginning(green))
	if !s.EndTime.IsZero() {
		said += ", " + s.EndTime.Format(shortDay)
	}
	return Safe(fmt.Sprintf("%s: moisture %s, weight %s", said, Percent(s.MoistureEnd), OnScale(h, s.WeightEnd, s.OnScale)))
}

// EndedWithin says between which figures the end of a step lies in eight of ten likely batches; "" where it
// is the same in all of them.
func (h House) EndedWithin(s outlook.StepSpread) string {
	if s.End.Share == 0 {
		return ""
	}
	var rows []SpreadRow
	rows = spreadRow(rows, "over after", &s.End, Lasting[answer.Seconds])
	rows = spreadRow(rows, "moisture", &s.MoistureEnd, Percent[answer.Share])
	rows = spreadRow(rows, "weight", &s.WeightEnd, func(kg answer.Kilograms) string { return Weighed(h, kg) })
	said := ""
	for _, r := range rows {
		if within := r.Within(); within != "" {
			said = Joined(", ", said, r.What+" "+within)
		}
	}
	if said == "" {
		return ""
	}
	said = "in 8 of 10 likely batches: " + said
	if float64(s.End.Share) < nearlyAll {
		said += "; " + Part(s.End.Share) + " of them have this step"
	}
	return said
}

// OfTen says in how many of ten something is so: 9 in 10.
func OfTen(share answer.Share) string {
	switch x := float64(share); {
	case x >= nearlyAll:
		return "10 in 10"
	case x > 0.95:
		return "over 9 in 10"
	case x <= 1-nearlyAll:
		return "0 in 10"
	case x < 0.05:
		return "under 1 in 10"
	default:
		return fmt.Sprintf("%.0f in 10", 10*x)
	}
}

// MarginGate says when a gate holds or that it does not, and in how many of ten likely batches it does; odds is nil where
// that is not known. Of a condition whose step says when it ends, that is left out, and "" is nothing more to say.
func MarginGate(g outlook.Gate, at time.Time, odds *answer.Share, ends bool) string {
	said := ""
	switch {
	case g.Unjudged:
		return "not judged"
	case !g.Met:
		said = "not met, " + Percent(g.Moisture)
	case !ends:
		said = "holds " + marginTime(g.Reached, at)
	}
	switch {
	case odds == nil:
		return said
	case said == "":
		return "holds " + OfTen(*odds)
	}
	return said + ", " + OfTen(*odds)
}

// MarginUnsure says in how many of ten likely batches a gate holds: the steep gate holds in 6 in 10.
func MarginUnsure(g outlook.Gate, odds answer.Share) string {
	return Safe("the " + strings.TrimSuffix(g.Awaits(), " gate") + " gate holds in " + OfTen(odds))
}

// Gated says of a gate when it holds, or by how much and how long it does not, in whole.
func (h House) Gated(g outlook.Gate, at time.Time, odds *answer.Share) string {
	said := g.Awaits() + ": " + g.Text
	switch {
	case g.Unjudged:
		said += " is not forecast, and counts as met at once"
	case g.Met:
		said += " holds " + marginTime(g.Reached, at) + ", at " + Percent(g.Moisture)
		if g.Hold && g.Waited >= 60 {
			said += ", waited for " + Lasting(g.Waited)
		}
	default:
		said += " is not met, " + h.Missed(g)
	}
	if odds != nil {
		said += "; it holds in " + Part(*odds) + " of likely batches"
	}
	return Safe(OneLine(said))
}

// Missed says by how much a gate was missed and how much longer it would take.
func (h House) Missed(g outlook.Gate) string {
	out := "not after " + Lasting(g.Waited)
	if g.Measured != nil {
		out = fmt.Sprintf("%s %s after %s", g.Measure, h.Say(*g.Measured), Lasting(g.Waited))
	}
	switch {
	case g.Never:
		out += "; it is not met at these settings"
	case !math.IsNaN(float64(g.Needs)):
		out += fmt.Sprintf("; it needs %s more", Lasting(g.Needs))
	}
	return out
}

// MarginReading says in few words what a reading comes to beside the forecast; "" of one that comes to nothing.
func (h House) MarginReading(r noted.Result) string {
	said := h.reading(r)
	if len(said) == 0 {
		return ""
	}
	text := said[0]
	if r.Doubt != nil {
		text += ", doubtful"
	}
	return Safe(text)
}

// MarginTotal says what comes of a process: 9 d 21 h, 4.97 kg of malt, moisture 4.4 %.
func (h House) MarginTotal(r outlook.Result) string {
	switch {
	case r.BrokenOff != nil:
		return Safe(fmt.Sprintf("the forecast breaks off in %s after %s", r.BrokenOff.Stage, After(r.BrokenOff.At)))
	case r.NoMalt != nil:
		return "no malt: it comes off the kiln at " + Percent(r.NoMalt.Moisture)
	}
	said := Lasting(r.Totals.Total)
	if r.NotForecast != nil {
		return said + ", its malt is not forecast"
	}
	if known(float64(r.Totals.Malt)) {
		said += ", " + Mass(h, r.Totals.Malt) + " of malt"
	}
	if known(float64(r.Totals.FinalMoisture)) {
		said += ", moisture " + Percent(r.Totals.FinalMoisture)
	}
	return said
}

// BySeverity says how many findings there are, the worst first: 1 fault, 2 cautions; no findings.
func BySeverity(list []finding.Finding) string {
	said := ""
	for s := finding.Danger; s >= finding.Note; s-- {
		n := 0
		for _, f := range list {
			if f.Severity == s {
				n++
			}
		}
		if n > 0 {
			said = Joined(", ", said, Plural(n, s.String()))
		}
	}
	if said == "" {
		return "no findings"
	}
	return said
}

// MarginStanding says how much longer a batch takes: what is next and when, and when its malt is ready, seen from
// now. Next is nil where nothing is left to do.
func (h House) MarginStanding(s noted.Standing, next *noted.Visit, asOf, now time.Time) string {
	said := "nothing is left to do"
	if next != nil {
		said = "next: " + h.Coming(*next, now)
	}
	if !s.Ready.IsZero() && s.Ready.After(now) {
		said += fmt.Sprintf("; ready %s, in %s", OnDay(s.Ready, now), Until(answer.Seconds(s.Ready.Sub(now).Seconds())))
	}
	if now.Sub(asOf) > time.Minute { // nobody wrote anything for long
		said = "as of " + asOf.Format(shortDay) + ": " + said
	}
	return Safe(said)
}

// MarginOver says what came of a batch whose malt was weighed.
func (h House) MarginOver(r noted.Result) string {
	said := strings.Join(h.reading(r), ", ")
	return Safe(Joined(": ", "over", said))
}

// marginFigures are those of an effect that are told beside a number.
var marginFigures = []string{"steep-out moisture", "total time", "final moisture", "malt"}

// MarginEffect says in a line what a forecast has otherwise than another: total time 8 d 9 h (+1 h), final moisture
// 4.4 % (-0.1 points); a caution comes: ... What is told is said of the new one.
func (h House) MarginEffect(r effect.Result) string {
	var list []string
	if why := NotForecast(r); len(why) > 0 {
		list = why
	} else {
		for _, row := range h.EffectRows(r.Effects[0]) {
			if !slices.Contains(marginFigures, row.What) {
				continue
			}
			said := row.What + " " + row.New
			if row.More != "" {
				said += " (" + row.More + ")"
			} else if row.Old != "" {
				said += " (was " + row.Old + ")"
			}
			list = append(list, said)
		}
	}
	said := strings.Join(list, ", ")
	for _, f := range r.Findings {
		switch f.Kind {
		case effect.CameUp:
			verb := " comes: "
			if slices.ContainsFunc(r.Findings, func(o effect.Finding) bool { return o.Kind == effect.Went && sameMatter(o, f) }) {
				verb = " stays in other words: "
			}
			said = Joined("; ", said, "a "+f.Severity+verb+f.Message)
		case effect.Went:
			if slices.ContainsFunc(r.Findings, func(o effect.Finding) bool { return o.Kind == effect.CameUp && sameMatter(o, f) }) {
				continue // told where it comes
			}
			said = Joined("; ", said, "a "+f.Severity+" goes: "+f.Message)
		}
	}
	if said == "" {
		said = "nothing shown changes"
	}
	return Safe(said)
}

// sameMatter tells whether two findings are of one rule, as grave, and on one line.
func sameMatter(a, b effect.Finding) bool {
	return a.Rule == b.Rule && a.Severity == b.Severity && a.Place != nil && b.Place != nil && a.Place.File == b.Place.File && a.Place.Line == b.Place.Line
}
