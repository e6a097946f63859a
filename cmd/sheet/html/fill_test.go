package html

import (
	"testing"

	"pgregory.net/rapid"

	"maltwright/cmd/sheet"
	"maltwright/cmd/write/fill/filltest"
)

func TestThePageIsFilledAsTheStandardLibraryFillsIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		look := func(d []sheet.Drawn) []sheet.Drawn {
			for i := range d {
				d[i].Look = sheet.Half // another cannot be drawn
			}
			return d
		}
		two := []sheet.Box{{}, {}} // the last is for the time
		boxes := func(b []sheet.Box) []sheet.Box { return append(b, two...) }
		head, tally, drawing := filltest.Any(t, sheet.Head{}), filltest.Any(t, sheet.Tally{}), filltest.Any(t, sheet.Drawing{})
		visit, gate := filltest.Any(t, sheet.Visit{}), filltest.Any(t, sheet.Gate{})
		tally.Classes, drawing.Shown, visit.Boxes, gate.Boxes = look(tally.Classes), look(drawing.Shown), boxes(visit.Boxes), boxes(gate.Boxes)
		tally.Ticks = max(0, tally.Ticks)
		ticks, spare, lines, names := filltest.Any(t, sheet.Ticks{}), filltest.Any(t, sheet.SpareRows{}), filltest.Any(t, sheet.Remarks{}), filltest.Any(t, sheet.Initials{})
		ticks.Rows, spare.Count, lines.Lines, names.Count = max(0, ticks.Rows), max(0, spare.Count), max(0, lines.Lines), max(0, names.Count)
		blocks := []sheet.Block{head, tally, drawing, visit, gate, ticks, spare, lines, names, filltest.Any(t, sheet.Heading{}), filltest.Any(t, sheet.Words{}), filltest.Any(t, sheet.Sums{}),
			filltest.Any(t, sheet.Readings{}), filltest.Any(t, sheet.SampleSum{}), filltest.Any(t, sheet.Cautions{}), filltest.Any(t, sheet.GoesWrong{}), filltest.Any(t, sheet.Code{})}
		s := filltest.Any(t, sheet.Sheet{})
		s.Size = rapid.SampledFrom([]sheet.Size{sheet.A4, sheet.Letter}).Draw(t, "size")
		s.Pages = []sheet.Page{{Of: filltest.Hostile().Draw(t, "of"), Blocks: blocks}, {Blocks: blocks[:1]}}
		filltest.Same(t, pages, "", s)
	})
}
