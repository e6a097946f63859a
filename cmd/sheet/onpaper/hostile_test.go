package onpaper

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/cmd/sheet"
	"maltwright/cmd/write/pdf/pdftest"
	"maltwright/lang/source"
)

// every is a block of each kind, all its texts of one source.
func every(text func() string) []sheet.Block {
	box := func() sheet.Box { return sheet.Box{Label: text(), Unit: text(), Filled: text()} }
	drawn := []sheet.Drawn{{Look: sheet.Quarter, Name: text()}, {Look: sheet.RubChalky, Name: text(), Naked: true}}
	return []sheet.Block{
		sheet.Head{Fields: []sheet.Field{{Label: text(), Text: text()}, {Label: text()}, {Label: text(), Text: text(), Wide: true}}},
		sheet.Heading{Text: text()},
		sheet.Words{Text: text()}, sheet.Words{Text: text(), Small: true},
		sheet.Sums{Rows: []sheet.Sum{{Label: text(), Working: text(), Result: text(), Strong: true}}},
		sheet.Visit{When: sheet.When{Day: text(), Clock: "23:00", After: text(), Mark: "night"}, Do: []string{text(), text()}, Expect: []string{text()}, Boxes: []sheet.Box{box(), box(), box()}},
		sheet.Visit{When: sheet.When{After: "start"}, Do: []string{text()}, Boxes: []sheet.Box{box()}},
		sheet.Readings{Rows: []sheet.Reading{{When: "Fri 6 Mar 14:00", Line: "x" + text()}}},
		sheet.SpareRows{Count: 2, Boxes: []sheet.Box{box(), box(), box(), box()}}, sheet.SpareRows{Count: 1},
		sheet.Drawing{Say: text(), Shown: drawn}, sheet.Drawing{},
		sheet.Tally{Title: text(), Say: text(), Classes: drawn, Ticks: 20, Line: text()},
		sheet.Ticks{Title: text(), Say: text(), Answers: []string{text(), text()}, Rows: 2}, sheet.Ticks{},
		sheet.Gate{Asks: text(), Looks: []string{text()}, Boxes: []sheet.Box{box(), box()}}, sheet.Gate{},
		sheet.SampleSum{Title: text(), Steps: []string{text()}, Boxes: []sheet.Box{box(), box(), box(), box(), box()}, Sum: text(), Line: text()},
		sheet.Remarks{Lines: 2}, sheet.Initials{Count: 3}, sheet.Initials{},
		sheet.Cautions{Title: text(), Lines: []string{text()}},
		sheet.GoesWrong{Title: text(), Rows: []sheet.Wrong{{What: text(), Do: text()}}, Small: text()},
		sheet.Code{Say: text(), Line: text()},
	}
}

// Whatever stands in a block, it is no taller than the form says, and leaves neither its page
// nor its place.
func TestABlockIsNoTallerThanTheFormSays(t *testing.T) {
	const together = 2 // blocks of a sheet
	letters := []rune("aaeeinrst   WM.i°½→麦\u0301\u200d\U0001f33e)(\\Жż\x00\u202e\u200b")
	rapid.Check(t, func(t *rapid.T) {
		some := rapid.OneOf(rapid.StringN(0, 30, -1), rapid.StringOfN(rapid.RuneFrom(letters), 0, 90, -1))
		blocks := every(func() string { return source.Safe(some.Draw(t, "text")) })
		s := sheet.Sheet{Title: some.Draw(t, "title"), Batch: some.Draw(t, "batch"), Code: some.Draw(t, "code"), Size: rapid.SampledFrom([]sheet.Size{sheet.A4, sheet.Letter}).Draw(t, "size")}
		from := rapid.IntRange(0, len(blocks)-together).Draw(t, "from")
		blocks = blocks[from : from+together]
		for _, b := range blocks {
			s.Pages = append(s.Pages, sheet.Page{Of: "x", Blocks: []sheet.Block{b, sheet.Words{}}}) // or it would stand at the foot
		}
		var file bytes.Buffer
		_, err := Write(&file, s)
		require.NoError(t, err)
		d := pdftest.Read(tb{t: t}, file.Bytes())
		nothingOutside(tb{t: t}, s, d)
		for i, page := range d.Pages {
			end := sheet.Margin + sheet.HeadTall + blocks[i].Tall(s.Size)
			for _, x := range page.Texts {
				if x.Y < s.Size.Tall-sheet.Margin-sheet.FootTall {
					assert.LessOrEqual(t, x.Y, end, "%T: %q", blocks[i], x.Words)
				}
			}
			for _, l := range page.Lines {
				for k := 1; k < len(l.Dots); k += 2 {
					assert.LessOrEqual(t, l.Dots[k], end+sheet.Gap/2, "%T", blocks[i])
				}
			}
		}
	})
}

// tb hands to rapid what a test asks of the testing package.
type tb struct {
	testing.TB
	t *rapid.T
}

func (r tb) Helper()                   {}
func (r tb) Errorf(f string, a ...any) { r.t.Errorf(f, a...) }
func (r tb) FailNow()                  { r.t.FailNow() }

func TestAWordWithoutAnEndIsCut(t *testing.T) {
	for _, text := range []string{strings.Repeat("W", 10000), strings.Repeat("\u0301", 10000), strings.Repeat("\u200d", 10000), strings.Repeat("麦", 10000), strings.Repeat("a\x00", 3000)} {
		s := sheet.Sheet{Title: text, Batch: text, Code: text, Size: sheet.A4, Pages: []sheet.Page{{Of: text, Blocks: []sheet.Block{
			sheet.Visit{When: sheet.When{Clock: "23:00"}, Boxes: []sheet.Box{{Label: text, Unit: text, Filled: text}, {Label: text}}},
			sheet.Drawing{Shown: []sheet.Drawn{{Look: sheet.Half, Name: text}}},
			sheet.Ticks{Title: "Rub", Answers: []string{text}, Rows: 1}}}}}
		nothingOutside(t, s, pdftest.Read(t, written(t, s)))
	}
}

func TestWhatTheFontsLackIsNamedOnThePaperAndOnTheScreen(t *testing.T) {
	s := sheet.Sheet{Title: "麦", Batch: "Batch 麦", Size: sheet.A4, Pages: []sheet.Page{{Of: "steep"}}}
	var file bytes.Buffer
	lost, err := Write(&file, s)
	require.NoError(t, err)
	assert.Equal(t, "the fonts of the paper lack 麦 (U+9EA6); a box stands in the place of each", lost)
	all := pdftest.Read(t, file.Bytes()).Pages[0].All()
	assert.Contains(t, all, "Batch □\n")
	assert.Contains(t, all, "maltwright sheet --format html has all letters. □ stands for a letter that this paper's fonts lack: U+9EA6\n")
}
