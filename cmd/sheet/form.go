package sheet

import (
	"math"

	"github.com/rivo/uniseg"
)

// Size is that of the paper, mm.
type Size struct {
	Name       string
	Wide, Tall float64
}

// The sizes: ISO 216, and the letter of ANSI/ASME Y14.1.
var (
	A4     = Size{"A4", 210, 297}
	Letter = Size{"Letter", 215.9, 279.4}
)

// The measures of the form, mm and points. What is written is read at arm's length, with wet glasses.
const (
	Margin     = 10.0 // at all sides
	HeadTall   = 9.0  // of the line at the top of a page: the batch, what the page is of, n of m
	FootTall   = 6.0  // of the line at the bottom
	Gap        = 1.5  // between two blocks
	BodyPoints = 11.0
	BodyLine   = 5.2 // from one line of it to the next
	FinePoints = 9.0 // small print
	FineLine   = 4.2
	HeadPoints = 13.0 // headings
	HeadLine   = 6.5

	BoxTall  = 12.5 // of a box to write into
	BoxLabel = 4.0  // of the small print above it
	BoxWide  = 34.0 // of one for a value
	TimeWide = 27.0 // of one for the time
	WhenWide = 27.0 // of the column of the clock
	TickWide = 6.0  // of a box to tick; it is as tall as a box
	NameWide = 36.0 // of the column of the classes of a tally

	LookTall = 20.0 // of a drawing, without its name
	RowTall  = 9.0  // of a line to write on
	Rule     = 1.5  // of the line above a visit, with what is left free below it
)

// points is how many mm a point is.
const points = 25.4 / 72

// letter is how wide a letter is in parts of its size: no less than those of text are in the mean, in
// any font that a writer takes.
const letter = 0.5

// Body is how wide what stands on a page is.
func (s Size) Body() float64 { return s.Wide - 2*Margin }

// Room is how tall all blocks of a page may be together, the gaps with them.
func (s Size) Room() float64 { return s.Tall - 2*Margin - HeadTall - FootTall }

// DoWide is how wide the column of what to do is, beside the clock, so many values in a line, and the time.
func (s Size) DoWide(values int) float64 {
	return s.Body() - WhenWide - TimeWide - 2*Gap - float64(values)*(BoxWide+Gap)
}

// Across is how many of the boxes for values stand in a line, the time behind them: two, or the only one.
// The others stand below.
func Across(boxes []Box) int { return max(1, min(2, len(boxes)-1)) }

// Lines is how many lines a text takes at the most.
func Lines(text string, wide, size float64) int {
	room := math.Floor(wide / (letter * size * points))
	lines, used := 1, 0.0
	word := 0.0
	flush := func() {
		switch {
		case word == 0:
			return
		case used == 0:
			used = word
		case used+1+word <= room:
			used += 1 + word
		default:
			lines, used = lines+1, word
		}
		if used > room { // broken within
			more := math.Ceil(used/room) - 1
			lines, used = lines+int(more), used-more*room
		}
		word = 0
	}
	for _, r := range text {
		if r == ' ' {
			flush()
			continue
		}
		word += float64(uniseg.StringWidth(string(r)))
	}
	flush()
	return lines
}

func tallOf(text string, wide float64, small bool) float64 {
	switch {
	case text == "":
		return 0
	case small:
		return FineLine * float64(Lines(text, wide, FinePoints))
	}
	return BodyLine * float64(Lines(text, wide, BodyPoints))
}

// besideTall is how tall the boxes of a visit or a gate are.
func besideTall(boxes []Box) float64 {
	if len(boxes) == 0 {
		return 0
	}
	n := Across(boxes)
	return boxesTall(max(1, (len(boxes)-1+n-1)/n)) // the time alone takes a line too
}

func boxesTall(lines int) float64 { return float64(lines) * (BoxLabel + BoxTall) }

// FieldWide is how wide one of two columns of the head is, and LabelWide its label.
func (s Size) FieldWide() float64 { return (s.Body() - Gap) / 2 }

// LabelWide is how wide the label of a field is.
const LabelWide = 27.0

// below is how much lower a label in small print stands, on the line of its text.
const below = BodyLine - FineLine

// Tall is that of rows with two fields each.
func (b Head) Tall(s Size) (tall float64) {
	for _, row := range b.Rows() {
		most := BodyLine
		for _, f := range row {
			wide := s.FieldWide()
			if f.Wide {
				wide = s.Body()
			}
			most = max(most, tallOf(f.Text, wide-LabelWide, false), tallOf(f.Label, LabelWide-1, true)+below, BodyLine)
			if f.Text == "" {
				most = max(most, RowTall)
			}
		}
		tall += most + 1
	}
	return tall
}

// Rows are the fields two and two, what is wide alone.
func (b Head) Rows() (rows [][]Field) {
	open := false
	for _, f := range b.Fields {
		switch {
		case f.Wide:
			rows, open = append(rows, []Field{f}), false
		case open:
			rows[len(rows)-1], open = append(rows[len(rows)-1], f), false
		default:
			rows, open = append(rows, []Field{f}), true
		}
	}
	return rows
}

// Tall is that of a line or more.
func (b Heading) Tall(s Size) float64 {
	return HeadLine * float64(Lines(b.Text, s.Body(), HeadPoints))
}

// Tall is that of its lines.
func (b Words) Tall(s Size) float64 { return tallOf(b.Text, s.Body(), b.Small) }

// SumWide is how wide what a sum is of is, and ResultWide its result.
const (
	SumWide    = 34.0
	ResultWide = 36.0
)

// Tall is that of a row for each.
func (b Sums) Tall(s Size) (tall float64) {
	for _, r := range b.Rows {
		tall += max(tallOf(r.Label, SumWide, false), tallOf(r.Working, s.Body()-SumWide-ResultWide, false), tallOf(r.Result, ResultWide, false)) + 1
	}
	return tall
}

// Tall is that of what to do, or of the boxes beside it.
func (b Visit) Tall(s Size) float64 {
	text, wide := 0.0, s.DoWide(Across(b.Boxes))
	for _, do := range b.Do {
		text += tallOf(do, wide, false)
	}
	for _, e := range b.Expect {
		text += tallOf(e, wide, true)
	}
	when := 2*BodyLine + FineLine
	if b.When.Clock == "" {
		when = RowTall + BodyLine + FineLine
	}
	if b.When.Mark != "" {
		when += FineLine
	}
	return max(text, when, besideTall(b.Boxes)) + Rule
}

// ReadWide is how wide the column of the clock is in rows of readings.
const ReadWide = 44.0

// Tall is that of a row for each.
func (b Readings) Tall(s Size) (tall float64) {
	for _, r := range b.Rows {
		tall += tallOf(r.Line, s.Body()-ReadWide, false) + 1
	}
	return tall
}

// Tall is that of a line of boxes for each.
func (b SpareRows) Tall(Size) float64 { return float64(b.Count) * (BoxLabel + BoxTall + Rule) }

// Tall is that of the drawings over their names.
func (b Drawing) Tall(s Size) float64 { return tallOf(b.Say, s.Body(), true) + LookTall + BodyLine + 1 }

// Tall is that of a line of boxes for each class.
func (b Tally) Tall(s Size) float64 {
	return BodyLine + tallOf(b.Say, s.Body(), true) + float64(len(b.Classes))*(BoxTall+1) + tallOf(b.Line, s.Body(), false) + 1
}

// Tall is that of a line of boxes for each row.
func (b Ticks) Tall(s Size) float64 {
	return BodyLine + tallOf(b.Say, s.Body(), true) + float64(b.Rows)*(BoxTall+2)
}

// Tall is that of what it asks, or of the boxes beside it, as of a visit.
func (b Gate) Tall(s Size) float64 {
	wide := s.DoWide(Across(b.Boxes)) + WhenWide + Gap
	text := tallOf(b.Asks, wide, false)
	for _, l := range b.Looks {
		text += tallOf(l, wide, true)
	}
	return max(text, besideTall(b.Boxes)) + Rule
}

// Tall is that of the steps, of a line of boxes, and of the sum.
func (b SampleSum) Tall(s Size) float64 {
	tall := BodyLine + 1 + boxesTall((len(b.Boxes)+3)/4) + tallOf(b.Sum, s.Body(), false) + tallOf(b.Line, s.Body(), false)
	for _, step := range b.Steps {
		tall += tallOf(step, s.Body()-Gap, false)
	}
	return tall
}

// Tall is that of the lines.
func (b Remarks) Tall(Size) float64 { return FineLine + float64(b.Lines)*RowTall }

// Tall is that of one line to write on.
func (b Initials) Tall(Size) float64 { return RowTall }

// Indent is how far lines of a list stand in, behind their mark.
const Indent = 5.0

// Tall is that of the lines.
func (b Cautions) Tall(s Size) float64 {
	tall := BodyLine + 1
	for _, l := range b.Lines {
		tall += tallOf(l, s.Body()-Indent, false)
	}
	return tall
}

// WrongWide is how wide what goes wrong is, beside what to do then.
const WrongWide = 40.0

// Tall is that of a row for each.
func (b GoesWrong) Tall(s Size) float64 {
	tall := BodyLine + 1 + tallOf(b.Small, s.Body(), true)
	for _, r := range b.Rows {
		tall += max(tallOf(r.What, WrongWide, false), tallOf(r.Do, s.Body()-WrongWide-Gap, false)) + 1
	}
	return tall
}

// Tall is that of the line in letters of one width, which are no narrower than others.
func (b Code) Tall(s Size) float64 {
	const mono = 0.61 / letter
	return tallOf(b.Say, s.Body(), true) + BodyLine*float64(Lines(b.Line, s.Body()/mono, BodyPoints)) + 2
}
