package chart

// Role is which of the lines of a panel one is. It gives the colour, the dash and the mark, so that
// lines can be told apart in any of the three ways. A panel of one line has First. There is no last role: a
// seventh line has the first colour again, with the dash and the mark of another.
type Role int

// The roles that have a colour of their own. Quiet is grey and thin, for what others are compared with:
// what was set, what was foretold before.
const (
	First Role = iota
	Second
	Third
	Fourth
	Fifth
	Sixth

	Quiet Role = -1
)

// colours is the number of roles that have a colour of their own.
const colours = 6

// Ink is a colour by what it is for. Which one it is a Scheme says, so that one drawing serves light,
// dark and print.
type Ink int

// The inks. Those of roles and of the steps of a field come from Role.Ink and Step.
const (
	Paper   Ink = iota // what all is drawn on
	Letters            // text
	Pale               // text of less weight: units, notes
	Frame              // axes and ticks
	Grid               // lines of the grid
	Night              // shade of the nights
	Level              // gates and their words
	Today              // the line of now
	greys              // Quiet
	firstRole
	firstStep = firstRole + colours
	// Inks is the number of inks.
	Inks = firstStep + Steps
)

// Steps is the number of colours of a field, from its least to its most.
const Steps = 9

// Ink is the colour of a role.
func (r Role) Ink() Ink {
	if r < 0 {
		return greys
	}
	return firstRole + Ink(r%colours)
}

// Step is the colour of the i-th step of a field, 0 to Steps-1; what lies outside has that of the end.
func Step(i int) Ink { return firstStep + Ink(max(0, min(i, Steps-1))) }

// dashes are lengths drawn and left out, px.
var dashes = [][]float64{nil, {7, 3}, {2, 3}, {9, 3, 2, 3}, {12, 3}, {5, 3, 1, 3, 1, 3}}

// Dash is how a line of the role is broken: lengths drawn and left out in turn, px; nil where it is whole.
func (r Role) Dash() []float64 {
	if r < 0 {
		return []float64{4, 3}
	}
	return dashes[(int(r)+int(r)/colours)%len(dashes)]
}

// Shape is the form of a mark.
type Shape int

// The shapes of marks. Ring and Cross are for what is doubted, and no role has them.
const (
	Disc Shape = iota
	Square
	Triangle
	Diamond
	Post // an upright bar
	Tip  // a triangle on its tip
	Ring
	Cross
)

// Shape is the mark of a role.
func (r Role) Shape() Shape {
	if r < 0 {
		return Disc
	}
	return Shape((int(r) + 2*(int(r)/colours)) % int(Ring))
}
