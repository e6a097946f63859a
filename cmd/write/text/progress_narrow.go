package text

import (
	"cmp"
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/words"
	"maltwright/sim/forecast"
)

// On a narrow sheet a row of figures has two columns behind its label: the middle, and from where one
// case in ten lies below to where nine in ten do. So it stands on one line.

// eightInTen is the head over such a range: so many cases lie in it.
const eightInTen = "8 in 10"

// shortly are labels for which a narrow sheet has no room, and what it says instead.
var shortly = strings.NewReplacer(
	"weight on the scale", "weight", "dry matter lost so far", "dry matter lost", "acrospire, as a part of the kernel", "acrospire",
	"in the middle of the bed", "bed, middle", "the air in the oven", "oven air", "the malt itself", "malt", "the marked bag", "marked bag",
	"diastatic enzymes kept", "enzymes kept", "steep-out moisture", "steep-out", "final moisture", "end moisture",
)

// layOut writes a table of spreads as wide as the sheet allows.
func (s *progressSheet) layOut(t *table) {
	if !s.narrow() {
		t.lay(&s.Sheet)
		return
	}
	rows := narrowRows{heads: [3]string{t.columns[0].head, t.columns[1].head, eightInTen}}
	for _, r := range t.rows {
		rows.add("  "+shortly.Replace(strings.TrimSpace(r.cells[0])), r.cells[1], words.Between(r.cells[2], r.cells[3]))
	}
	rows.lay(&s.Sheet)
}

// narrowRows are rows of a label, a middle and a range. A text between them has as many lines as it needs.
type narrowRows struct {
	heads [3]string
	rows  []narrowRow
}

type narrowRow struct {
	cells [3]string
	text  string
}

func (n *narrowRows) add(cells ...string) {
	n.rows = append(n.rows, narrowRow{cells: [3]string(cells)})
}

func (n *narrowRows) say(text string) { n.rows = append(n.rows, narrowRow{text: text}) }

// lay writes them. The columns are as wide as the rows need: one that needs more room than there is has its
// range on a line of its own.
func (n narrowRows) lay(s *Sheet) {
	columns := []column{{}, {gap: 1, right: true}, {gap: 1, right: true}}
	widen := func(cells ...string) bool {
		wide, sum := make([]int, len(columns)), 0
		for i, c := range columns {
			wide[i] = max(c.width, uniseg.StringWidth(cells[i]))
			sum += c.gap + wide[i]
		}
		for i := range columns {
			if sum <= s.columns() {
				columns[i].width = wide[i]
			}
		}
		return sum <= s.columns()
	}
	widen("", n.heads[1], n.heads[2])
	fits := make([]bool, len(n.rows))
	for i, r := range n.rows {
		fits[i] = r.text == "" && widen(r.cells[:]...)
	}
	heads := n.heads
	if !widen(heads[:]...) {
		s.title(heads[0])
		heads[0] = ""
	}
	s.line("%s", s.bold(rowOf(columns, heads[:])))
	for i, r := range n.rows {
		switch {
		case r.text != "":
			s.item("%s", r.text)
		case fits[i]:
			s.row(columns, r.cells[:])
		default:
			s.line("%s: %s", r.cells[0], r.cells[1])
			s.hang("    ", r.cells[2])
		}
	}
}

// weekAhead is how far ahead no two days have the same name.
const weekAhead = answer.Seconds(6 * 24 * 3600)

// narrowSteps writes the steps to come on a narrow sheet. A day is told by its name alone as long as no two
// of them have the same.
func (s *progressSheet) narrowSteps() {
	middle, ends := "Mon 2 Jan", "2 Jan"
	last := s.r.Steps[len(s.r.Steps)-1].End
	if s.r.Posterior.Trusted && last.P90 < s.r.Elapsed+weekAhead {
		middle, ends = byHour, byHour
	}
	rows := narrowRows{heads: [3]string{"the rest", "ends", eightInTen}}
	for i, x := range s.r.Steps {
		if x.Label == forecast.Waiting { // it is told as what is waited for
			continue
		}
		at := func(t answer.Seconds, layout string) string { return s.clock(t).Format(layout) }
		rows.add(s.label(i), at(x.End.P50, middle), words.Between(at(x.End.P10, ends), at(x.End.P90, ends)))
		if x.End.Share < nearlyAll {
			rows.say("in " + words.Part(x.End.Share) + " of the cases")
		}
		if on := s.stepWeights(x); on != "" {
			rows.say(on)
		}
	}
	rows.lay(&s.Sheet)
	s.line("")
}

// narrowWaits writes how much longer conditions take, each with its figures below it.
func (s *progressSheet) narrowWaits(title string, list []progress.Wait) {
	rows := narrowRows{heads: [3]string{title, "middle", eightInTen}}
	for _, w := range list {
		rows.say(words.Awaited(w))
		rows.add("   ", words.Until(w.Left.P50), words.Between(words.Until(w.Left.P10), words.Until(w.Left.P90)))
		if clock := s.hour(w.Left.P50); clock != "" {
			rows.add("   ", clock, words.Between(s.hour(w.Left.P10), cmp.Or(s.hour(w.Left.P90), words.Until(w.Left.P90))))
		}
	}
	rows.lay(&s.Sheet)
	s.line("")
}
