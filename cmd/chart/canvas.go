package chart

// Measure knows how wide a text is.
type Measure interface {
	// Width is that of a text in letters of a size, px; a canvas that cannot know its font errs to the wide side.
	Width(text string, size float64, bold bool) float64
}

// Canvas is what a chart is drawn on. Lengths are px of 1/96 inch, x to the right and y down, from the
// upper left corner. It draws in the order in which it is called, and clips nothing: what Lay draws lies
// within its size. Texts are plain: the canvas escapes them.
type Canvas interface {
	Measure
	// Polyline draws an open line through two points or more.
	Polyline(points []XY, pen Pen)
	// Area fills a closed one.
	Area(corners []XY, fill Fill)
	// Box fills an upright rectangle.
	Box(at XY, width, height float64, fill Fill)
	// Mark draws a shape about a point, size px across.
	Mark(at XY, shape Shape, size float64, ink Ink)
	// Text writes one line, at its baseline.
	Text(at XY, text string, l Lettering)
}

// XY is a point, px.
type XY struct{ X, Y float64 }

// Pen is how a line is drawn.
type Pen struct {
	Ink   Ink
	Width float64   // px
	Dash  []float64 // lengths drawn and left out in turn, px; nil where it is whole
}

// Fill is how an area is filled.
type Fill struct {
	Ink   Ink
	Share float64 // how much of it covers what lies below, 0 to 1; 0 is 1
}

// Lettering is how a text is written.
type Lettering struct {
	Size  float64 // px
	Bold  bool
	Ink   Ink
	Align Align
	Halo  bool // with paper about it, since it may lie on lines
}

// Align is which end of a text its point is.
type Align int

// The aligns.
const (
	AtStart Align = iota // the text begins at the point
	AtMiddle
	AtEnd // it ends there
)

// Corners are those of a shape about a point, size px across: to be filled, but of a Cross, which is
// two lines: its corners are the ends of the one, then of the other. Disc and Ring have none, and are circles: filled the one, a line the other.
func (s Shape) Corners(at XY, size float64) []XY {
	r := size / 2
	on := func(list ...float64) (corners []XY) {
		for i := 0; i < len(list); i += 2 {
			corners = append(corners, XY{at.X + r*list[i], at.Y + r*list[i+1]})
		}
		return corners
	}
	switch s {
	case Square:
		return on(-0.85, -0.85, 0.85, -0.85, 0.85, 0.85, -0.85, 0.85)
	case Triangle:
		return on(0, -1.1, 1, 0.8, -1, 0.8)
	case Diamond:
		return on(0, -1.2, 1.1, 0, 0, 1.2, -1.1, 0)
	case Post:
		return on(-0.45, -1.1, 0.45, -1.1, 0.45, 1.1, -0.45, 1.1)
	case Tip:
		return on(0, 1.1, 1, -0.8, -1, -0.8)
	case Cross:
		return on(-0.9, -0.9, 0.9, 0.9, -0.9, 0.9, 0.9, -0.9)
	default:
		return nil
	}
}
