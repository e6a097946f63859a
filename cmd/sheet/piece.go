package sheet

import (
	"math"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

// mostRules is how many lines of a piece have room above its visits.
const mostRules = 14

// rules are what the process says of a piece, in its own words: the bed that is held, the air, the
// turns, what is sprinkled and when, and when it ends.
func rules(st forecast.Stage) (list []Block) {
	if model.PieceOf(st.Of) == nil {
		return nil
	}
	for l := range strings.Lines(inside(st.Of.Place())) {
		l = words.Safe(words.OneLine(uncommented(l)))
		if strings.Trim(l, "{} ") == "" {
			continue
		}
		if len(list) == mostRules {
			return append(list, Words{Small: true, Text: "and more, in the file of the process"})
		}
		list = append(list, Words{Text: short(l)})
	}
	if len(list) == 0 {
		return nil
	}
	return append([]Block{Words{Small: true, Text: "as the process has it:"}}, list...)
}

// inside is what stands between the braces behind the head of a stage.
func inside(at source.Place) string {
	if at.File == nil {
		return ""
	}
	text := at.File.Text(source.Span{Start: at.Start, End: at.File.Size()})
	open, from := 0, 0
	quoted, remark := false, false
	for i, r := range text {
		switch {
		case remark:
			remark = r != '\n'
		case r == '"':
			quoted = !quoted
		case quoted:
		case r == '#':
			remark = true
		case r == '{':
			if open++; open == 1 {
				from = i + 1
			}
		case r == '}':
			if open--; open == 0 {
				return text[from:i]
			}
		}
	}
	return ""
}

// uncommented is a line without the remark at its end.
func uncommented(line string) string {
	quoted := false
	for i, r := range line {
		switch {
		case r == '"':
			quoted = !quoted
		case r == '#' && !quoted:
			return line[:i]
		}
	}
	return line
}

// A bed that nobody turns by hand is read all the same, at each turn of the machine that is no nearer
// than readLeast to the one before, or every readMost, s (common practice).
const (
	readLeast = 6 * 3600.0
	readMost  = 12 * 3600.0
)

// between are the rows in which a growing bed is read, from one visit of its stage to the next: where a
// machine turns it or nothing does, nobody else would look at it for days.
func (m *maker) between(i int, from, to float64) (list []Visit) {
	st := m.f.Stages[i]
	piece := model.PieceOf(st.Of)
	if st.Kind != model.GerminateStage || len(st.Steps) == 0 {
		return nil
	}
	often := readMost
	switch {
	case piece.Turn == nil:
	case piece.Turner.Text == "" && piece.Turn.SI <= readMost:
		return nil
	case piece.Turner.Text != "" && piece.Turn.SI >= readLeast:
		often = min(often, piece.Turn.SI)
	}
	begin := st.Steps[0].Start
	from = max(from, begin)
	if m.batch != nil {
		from = max(from, m.until.Sub(m.o.Start).Seconds())
	}
	const apart = 3600 // not beside a visit
	for k := math.Floor((from-begin)/often) + 1; begin+k*often < to-apart; k++ {
		if at := begin + k*often; at > from+apart {
			list = append(list, m.reads(i, at))
		}
	}
	return list
}

// reads is a row in which the bed and the air are read.
func (m *maker) reads(i int, at float64) Visit {
	st := m.f.Stages[i]
	piece := model.PieceOf(st.Of)
	v := timetable.Visit{At: answer.Seconds(at), Time: outlook.ClockAt(m.o.Start, answer.Seconds(at)), Tasks: []timetable.Task{{Do: timetable.Do{Kind: visits.Look, Stage: st.Kind}}}}
	if s := m.p.Site; s != nil && s.Said() && m.clock {
		clock := visits.From(m.o.Start)
		up := clock.Awake(s.Hours, at)
		v.Awake = &up
	}
	do := "look, smell, read"
	if piece.Turner.Text != "" {
		do += "; does it turn?"
	}
	places := []string{vocabulary.PlaceBed}
	if len(piece.Blown) > 0 {
		places = append(places, vocabulary.PlaceAirOn, vocabulary.PlaceAirOff)
		do += " Does the fan run?"
	}
	out := Visit{When: m.when(part{Visit: v, stage: i}), Do: []string{do}, Beside: true}
	if held := m.held(part{Visit: v, stage: i}); held != "" {
		out.Expect = append(out.Expect, short(words.Safe("held: "+held)))
	}
	for _, p := range places {
		out.Boxes = append(out.Boxes, Box{Label: p, Unit: m.h.Degree()})
	}
	out.Expect = append(out.Expect, "may wait an hour or two")
	for _, p := range places {
		out.Expect = append(out.Expect, "note read "+p+" "+blank)
	}
	out.Boxes = append(out.Boxes, Box{Label: "time"})
	return out
}

// lookedAt are the times at which a stage is looked at, as its rows tell them.
func (m *maker) lookedAt(i int) (times []string) {
	for _, v := range m.parts() {
		if v.stage != i {
			continue
		}
		for _, t := range v.Tasks {
			if t.Kind != visits.Look && t.Kind != visits.EndFloor && t.Kind != visits.Gate || !strings.Contains(t.Until, vocabulary.MeasureAcrospire) && !strings.Contains(t.Until, vocabulary.MeasureRub) {
				continue
			}
			when := "after " + words.Since(v.At)
			if m.clock {
				when = "of " + v.Time.Format(onDay+" "+onClock)
			}
			times = append(times, when)
			break
		}
	}
	return times
}
