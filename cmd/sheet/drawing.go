package sheet

// Picture is a drawing as lines, for whatever writes the sheet. It is as tall as 1 and
// Wide in that measure; x runs to the right, y downward.
type Picture struct {
	Wide    float64
	Strokes []Stroke
}

// Picture is how a look is drawn. A naked kernel, as of wheat or rye, has its shoot
// outside; one with a husk, as of barley, under it.
func (l Look) Picture(naked bool) Picture {
	if _, ok := growth[l]; ok {
		return kernel(l, naked)
	}
	if l == Break {
		return frontThrough()
	}
	return rub(l)
}

// Dot is a place in a picture.
type Dot struct{ X, Y float64 }

// Stroke is one line of a picture. Where Curved, Dots are a start and then three for
// each cubic Bézier: two that it leans to and its end. Otherwise they are joined by straight lines.
type Stroke struct {
	Dots   []Dot
	Curved bool
	Closed bool
	Ink    Ink
	Thick  float64 // in the measure of the picture; nothing where only the area is inked
}

// Ink is what becomes of the area within a stroke.
type Ink int

const (
	Open  Ink = iota // the paper, and whatever was drawn before, is seen through it
	White            // it hides what was drawn before
	Black
)

// Thicknesses of lines: at 20 mm the outline is 0.4 mm, which a worn printer still shows.
const (
	outline = 0.020
	thin    = 0.010
)

// through is a smooth curve through dots: at each it runs as its two neighbours lie
// (a Catmull-Rom spline, written as Béziers).
func through(closed bool, dots ...Dot) []Dot {
	n := len(dots)
	at := func(i int) Dot {
		if closed {
			return dots[(i+n)%n]
		}
		return dots[min(max(i, 0), n-1)]
	}
	last := n - 1
	if closed {
		last = n
	}
	path := []Dot{dots[0]}
	for i := range last {
		a, b, c, d := at(i-1), at(i), at(i+1), at(i+2)
		path = append(path,
			Dot{b.X + (c.X-a.X)/6, b.Y + (c.Y-a.Y)/6},
			Dot{c.X - (d.X-b.X)/6, c.Y - (d.Y-b.Y)/6}, c)
	}
	return path
}

// curve is an open line through dots, shape the area that a line through them goes around.
func curve(thick float64, dots ...Dot) Stroke {
	return Stroke{Dots: through(false, dots...), Curved: true, Thick: thick}
}

func shape(ink Ink, thick float64, dots ...Dot) Stroke {
	return Stroke{Dots: through(true, dots...), Curved: true, Closed: true, Ink: ink, Thick: thick}
}

func line(thick float64, dots ...Dot) Stroke { return Stroke{Dots: dots, Thick: thick} }
