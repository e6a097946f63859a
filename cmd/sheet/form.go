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
