package text

import (
	"fmt"
	"io"
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/answer/effect"
	"maltwright/cmd/words"
)

// whatWidth is the width of the first of three columns; the other two share the rest.
const whatWidth = 25

// figureWidth is the width of the earlier of two figures; the later one, with what there is more of it,
// takes the rest.
const figureWidth = 22

// half is the width of each of the other two.
func (s *Sheet) half() int { return (s.columns() - whatWidth) / 2 }

// Effect writes what changed, the old and the new side by side, and what the forecasts
// make of it.
func Effect(w io.Writer, r effect.Result, h words.House, o Options) error {
	s := &Sheet{House: h, Options: o}
	switch {
	case len(r.Changes) == 0:
		s.plain(r.Old + " and " + r.New + " mean the same")
	case s.narrow():
		s.title(words.Plural(len(r.Changes), "change") + ", " + words.Safe(r.Old) + " → " + words.Safe(r.New))
	default:
		s.three([]string{s.bold(words.Plural(len(r.Changes), "change"))}, folded(r.Old, s.half()), folded(r.New, s.half()), s.bold)
	}
	s.changes(words.ChangeRows(r))
	s.effects(r)
	s.cameAndWent(r.Findings)
	_, err := io.WriteString(w, s.String())
	return err
}

// Supposed writes what would be with changes, beside the forecast of what is written.
func Supposed(w io.Writer, r effect.Result, changes []string, h words.House, o Options) error {
	s := &Sheet{House: h, Options: o}
	for i, c := range changes {
		label := "supposed"
		if i > 0 {
			label = ""
		}
		s.para(label, "%s", words.Safe(c))
	}
	if len(words.NotForecast(r)) == 0 && len(s.EffectRows(r.Effects[0])) == 0 {
		s.line("")
		s.plain("it makes no difference to the forecast")
	} else {
		s.line("")
		if !s.narrow() {
			s.line("%s", s.bold(fmt.Sprintf("%-*s%-*sas supposed", whatWidth, "", figureWidth, "as written")))
		}
	}
	s.effects(r)
	s.cameAndWent(r.Findings)
	_, err := io.WriteString(w, s.String())
	return err
}

func (s *Sheet) changes(rows []words.ChangeRow) {
	group := ""
	for _, r := range rows {
		if r.Group != group {
			group = r.Group
			s.line("")
			s.plain(group)
		}
		if s.narrow() {
			s.changed(r)
			continue
		}
		what := words.Wrap(words.Safe(r.What), whatWidth-3)
		for i := range what {
			what[i] = "  " + what[i]
		}
		s.three(what, side(r.Old, r.OldLine, s.half()), side(r.New, r.NewLine, s.half()), nil)
	}
}

// changed writes a change as one paragraph.
func (s *Sheet) changed(r words.ChangeRow) {
	at := ""
	switch {
	case r.OldLine > 0 && r.NewLine > 0 && r.OldLine != r.NewLine:
		at = fmt.Sprintf(", line %d → %d", r.OldLine, r.NewLine)
	case max(r.OldLine, r.NewLine) > 0:
		at = fmt.Sprintf(", line %d", max(r.OldLine, r.NewLine))
	}
	s.item("%s", words.Joined(": ", words.Safe(r.What), words.Safe(dash(r.Old)+" → "+dash(r.New))+at))
}

// plain writes a sentence over the whole width.
func (s *Sheet) plain(text string) {
	for _, l := range words.Wrap(words.Safe(text), s.columns()) {
		s.line("%s", l)
	}
}

// folded breaks the name of a file behind a slash where it is too wide for its column.
func folded(name string, width int) []string {
	lines := []string{""}
	for _, part := range strings.SplitAfter(words.Safe(name), "/") {
		if last := &lines[len(lines)-1]; *last == "" || uniseg.StringWidth(*last+part)+2 <= width {
			*last += part
		} else {
			lines = append(lines, part)
		}
	}
	return lines
}

// side is one side of a change: its words, and the line where they stand.
func side(text string, number, width int) []string {
	if text == "" {
		return []string{dash(text)}
	}
	text = words.Safe(text)
	if number == 0 {
		return words.Wrap(text, width-2)
	}
	lines, at := words.Wrap(text, width-2), fmt.Sprintf("line %d", number)
	if last := &lines[len(lines)-1]; uniseg.StringWidth(*last)+2+len(at) < width {
		*last += "  " + at
		return lines
	}
	return append(lines, at)
}

// three writes three columns of lines side by side. Cells are wrapped by their makers.
func (s *Sheet) three(what, old, new []string, style func(string) string) {
	at := func(list []string, i int) string {
		if i < len(list) {
			return list[i]
		}
		return ""
	}
	for i := range max(len(what), len(old), len(new)) {
		a, b, c := at(what, i), at(old, i), at(new, i)
		pads := [2]string{padding(a, whatWidth), padding(b, s.half())}
		if style != nil {
			b, c = style(b), style(c)
		}
		s.line("%s", strings.TrimRight(a+pads[0]+b+pads[1]+c, " "))
	}
}

func padding(text string, width int) string {
	text = strings.NewReplacer("\x1b[1m", "", "\x1b[0m", "").Replace(text)
	return strings.Repeat(" ", max(0, width-uniseg.StringWidth(text)))
}

// effects writes the figures that came out otherwise.
func (s *Sheet) effects(r effect.Result) {
	for _, why := range words.NotForecast(r) {
		s.line("")
		s.plain(why)
	}
	for _, e := range r.Effects {
		rows := s.EffectRows(e)
		if len(rows) == 0 {
			continue
		}
		s.line("")
		s.title("forecast of " + words.Safe(e.Process))
		for _, row := range rows {
			s.effect(row)
		}
	}
}

// effect writes a figure with its name, which may take a line of its own.
func (s *Sheet) effect(r words.EffectRow) {
	if s.narrow() {
		s.item("%s", words.Joined(", ", words.Safe(r.What)+": "+dash(r.Old)+" → "+dash(r.New), r.More))
		return
	}
	name := "  " + words.Safe(r.What)
	value := r.New
	if r.More != "" {
		value += "  " + r.More
	}
	if uniseg.StringWidth(name) >= whatWidth {
		for _, l := range words.Wrap(name, s.columns()-2) {
			s.line("  %s", l)
		}
		name = ""
	}
	s.line("%s", strings.TrimRight(name+padding(name, whatWidth)+dash(r.Old)+padding(dash(r.Old), figureWidth)+dash(value), " "))
}

func dash(text string) string {
	if text == "" {
		return "–"
	}
	return text
}

func (s *Sheet) cameAndWent(list []effect.Finding) {
	if len(list) == 0 {
		return
	}
	s.line("")
	s.line("%s", s.bold("findings"))
	for _, f := range words.CameRows(list) {
		label := f.Kind
		for _, l := range words.Wrap(f.Severity+": "+f.Text, s.columns()-8) {
			s.line("  %-6s%s", label, l)
			label = ""
		}
	}
}
