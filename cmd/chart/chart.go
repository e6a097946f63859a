// Package chart is what a chart says and how it is laid out; it knows nothing of malting. A chart holds
// shown numbers: those of the house's units, ready to be drawn. Lay gives each its place on a sheet, and
// draws it on a Canvas: SVG and PDF are canvases. What draws with letters takes the chart itself.
//
// Nothing here asks a clock or draws lots: the same chart gives the same drawing.
package chart

import "time"

// Chart is one or more panels over one another, which share an axis of time.
type Chart struct {
	Title, Sub string
	Start      time.Time // what times are counted from, in the time zone that is shown; zero where the axis is told as days and hours
	Since      string    // where Start is zero: what the days and hours are counted from, as "the first soak"
	From, To   float64   // the ends of the axis, s from the start
	Nights     []Span    // shaded; their names are not shown
	Stages     []Span    // stretches named along the axis
	Now        *float64  // s from the start; what stands left of it has been, what stands right is foretold; nil where there is no now
	Panels     []Panel
	Note       []string // paragraphs below it
}

// Span is a stretch of time, s from the start.
type Span struct {
	From, To float64
	Name     string
}

// Panel is a frame with an axis of its own, of one quantity.
type Panel struct {
	Name, Unit  string  // "moisture", "%"
	Places      int     // decimals at which a value of it is shown
	Least, Most float64 // what the axis holds at any rate, as 0 and 100 of a share; both 0: what the figures are
	Tall        float64 // how tall it is beside the others; 0 is 1
	Lines       []Line
	Bands       []Band
	Points      []Point
	Gates       []Gate
	Field       *Field // takes the place of all others; the axis is its depth
}

// Line is a course. At and Value are of one length, At in ascending order; a value that is NaN breaks the line.
type Line struct {
	Name      string // stands at its end
	Role      Role
	At, Value []float64
	Step      bool // a value holds until the next
}

// Band is a range that most of the cases lie in, 10 to 90 in a hundred of them, and what lies in the middle.
// All are of the length of At; NaN breaks it. Middle may be nil.
type Band struct {
	Name                  string
	Role                  Role
	At, Low, Middle, High []float64
}

// Point is what was measured.
type Point struct {
	At, Value float64
	Error     float64 // by which it may be wrong, either way; 0 or NaN where that is not known
	Doubted   bool    // it is drawn as a cross in a ring; where it lies far off, at the end of the axis with its value
	Name      string  // what it is called in the table
	Role      Role    // of the line it belongs to
}

// Gate is a condition as a level, for as long as it is asked.
type Gate struct {
	Value    float64
	From, To float64 // both 0: all along
	Name     string  // "dry enough: 4.5 %"
}

// Field is a quantity by depth and time: Value has a row for each depth, and in it a value for each time.
// Depth is in the unit of its panel, ascending; the first lies at the foot. NaN is where it is not known.
type Field struct {
	Name, Unit string // of the quantity: "moisture of the bed", "%"
	Places     int
	At, Depth  []float64
	Value      [][]float64
	Low, High  float64 // the ends of its scale; both 0: what the values are
}

// Bars is a chart without time: lengths beside names, as of what drives a spread.
type Bars struct {
	Title, Sub string
	Groups     []BarGroup
	Note       []string
}

// BarGroup is bars of one quantity, which share a scale.
type BarGroup struct {
	Name, Unit string
	Places     int
	Most       float64 // what the scale holds at any rate, as 100 of a share; 0: what the bars are
	Bars       []Bar
}

// Bar is a length beside a name.
type Bar struct {
	Name  string
	Value float64 // may be below nothing
	Error float64 // either way; 0 or NaN where that is not known
	Text  string  // stands at its end; "" writes the value
	Role  Role
}
