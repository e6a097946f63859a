// Package sheet is what stands on the paper by the bucket: pages of blocks, in words and in the
// units of the house, with empty boxes for a pencil. It is made of a forecast or of a batch under
// way, and drawn by a writer: cmd/sheet/html and cmd/sheet/onpaper.
//
// A writer decides nothing: each text is as it is printed, safe to be shown, and pages end where they
// end here. How tall a block is on its page says its Tall, by the measures of form.go, which writers
// keep to; so all of them have the same pages.
package sheet

// Sheet is the whole of it.
type Sheet struct {
	Title string // Batch 26-03; Loft pale
	Batch string // the name of the batch, or of the process; what stands at the head of each page
	Code  string // by which note finds the batch: the words to type in front of a reading; "" where there is no batch yet
	Size  Size
	Pages []Page

	Misses bool // by the forecast not all is reached that the process asks for: the paper says where
}

// Page is a page.
type Page struct {
	Of     string // what it is of: steep; germinate 2, page 3
	Blocks []Block
}

// Block is one of the kinds below. Tall is how many mm of a page it takes.
type Block interface {
	Tall(Size) float64
	block()
}

// Head is what the paper is of: label and text, in two columns, row by row.
type Head struct{ Fields []Field }

// Field is a fact behind its label.
type Field struct {
	Label string
	Text  string // "" is a line to write on
	Wide  bool   // takes both columns
}

// Heading stands over what follows.
type Heading struct{ Text string }

// Words is a paragraph.
type Words struct {
	Text  string
	Small bool // in small print
}

// Sums are reckonings, each in a line: what, the working, what comes of it.
type Sums struct{ Rows []Sum }

// Sum is a reckoning.
type Sum struct {
	Label   string // weight to look for
	Working string // 5.256 kg / (1 - 0.43)
	Result  string // 9.22 kg
	Strong  bool   // it is what to look for
}

// Visit is a time at which somebody goes to the batch, or one at which somebody went.
type Visit struct {
	When   When
	Do     []string // what to do, a sentence each
	Expect []string // what the scale and the thermometer should show, small
	Boxes  []Box    // what they did show, large; the last is that of the time
	Beside bool     // it is no visit of the timetable: the bed is read between two, or something is late
}

// When is the time of a visit.
type When struct {
	Day   string // Fri 6 Mar; "" where the clock is not known
	Clock string // 23:00; "" where it is not known: there is a line to write it on
	After string // 16 h, from the first soak
	Mark  string // night, away, asleep, late
}

// Box is an empty box to write into.
type Box struct {
	Label  string // weight, in "blue tub"; time
	Unit   string // kg; stands in the box at its right; "" for none
	Filled string // what was read, where it was
}

// Readings are what was read so far, a row each, filled in.
type Readings struct{ Rows []Reading }

// Reading is a line of the record.
type Reading struct {
	When string // Fri 6 Mar 14:00
	Line string // weighed 8.33 kg in "blue tub" after soak 1
}

// SpareRows are visits that nobody foresaw: lines with empty boxes.
type SpareRows struct {
	Count int
	Boxes []Box // of each
}

// Look is something that is drawn. Its strokes are those of drawing.go.
type Look string

// The looks.
const (
	Chit          Look = "chit"
	NoShoot       Look = "no shoot"
	Quarter       Look = "1/4"
	Half          Look = "1/2"
	ThreeQuarters Look = "3/4"
	Whole         Look = "1"
	Overgrown     Look = "overgrown"
	RubGummy      Look = "gummy"
	RubGritty     Look = "gritty"
	RubChalky     Look = "chalky"
	Break         Look = "break"
)

// Drawing is a row of drawings, each over its name.
type Drawing struct {
	Say   string // what they show and how to look, in small print above; "" for nothing
	Shown []Drawn
}

// Drawn is a drawing.
type Drawn struct {
	Look  Look
	Name  string
	Naked bool // a kernel without husk, as of wheat or rye: its shoot lies outside
}

// Picture is its lines.
func (d Drawn) Picture() Picture { return d.Look.Picture(d.Naked) }

// Tally is a count of kernels by classes: a line of boxes to tick for each, and one for its sum.
type Tally struct {
	Title   string
	Say     string // how to count
	Classes []Drawn
	Ticks   int    // boxes in a line
	Line    string // what to note, with empty places
}

// Ticks is a look with a choice of answers, one of which is ticked: gummy, gritty, chalky.
type Ticks struct {
	Title   string
	Say     string // how to look
	Answers []string
	Rows    int // how often
}

// Gate is a condition that must hold: what it asks, how to look, and whether it held.
type Gate struct {
	Asks  string   // gate moisture at most 10 %
	Looks []string // what to look for, a sentence each
	Boxes []Box    // what was found; the last is that of the time
}

// SampleSum lays out the sum of the moisture of a sample from the oven.
type SampleSum struct {
	Title string
	Steps []string // what to do, in order
	Boxes []Box    // weights, in the order in which they are come by; the last is the result
	Sum   string   // the formula in the labels of the boxes
	Line  string   // what to note, with empty places
}

// Remarks are lines to write on.
type Remarks struct{ Lines int }

// Initials are places for who did it.
type Initials struct{ Count int }

// Cautions are what can hurt somebody, a sentence each.
type Cautions struct {
	Title string
	Lines []string
}

// GoesWrong is what to do when something goes wrong.
type GoesWrong struct {
	Title string
	Rows  []Wrong
	Small string // by whose word
}

// Wrong is something that goes wrong.
type Wrong struct{ What, Do string }

// Code is a line to type.
type Code struct{ Say, Line string }

func (Head) block()      {}
func (Heading) block()   {}
func (Words) block()     {}
func (Sums) block()      {}
func (Visit) block()     {}
func (Readings) block()  {}
func (SpareRows) block() {}
func (Drawing) block()   {}
func (Tally) block()     {}
func (Ticks) block()     {}
func (Gate) block()      {}
func (SampleSum) block() {}
func (Remarks) block()   {}
func (Initials) block()  {}
func (Cautions) block()  {}
func (GoesWrong) block() {}
func (Code) block()      {}
