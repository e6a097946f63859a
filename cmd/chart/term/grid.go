package term

import (
	"math"
	"math/bits"
	"strings"

	"github.com/rivo/uniseg"
)

// grid is the cells of a panel, row by row from the top.
type grid struct {
	set           *signs
	width, height int
	cells         []cell
	lettered      bool // several lines: plain ones are drawn with their letters
}

// cell is what stands in one: dots of a band, a gate and lines, or a sign in the place of all of them.
type cell struct {
	band, gate, line uint8  // dots, a bit each
	lines            uint64 // which lines pass, a bit each
	sign             string // "" where there is none
	ink              string // of the sign, else of the line
	spoken           bool   // words stand in it
	covered          bool   // by the cell in front of it, which is two columns wide
}

func newGrid(s *signs, width, height int) *grid {
	return &grid{set: s, width: width, height: height, cells: make([]cell, width*height)}
}

func (g *grid) at(column, row int) *cell { return &g.cells[row*g.width+column] }

// within tells whether there is such a cell.
func (g *grid) within(column, row int) bool {
	return column >= 0 && column < g.width && row >= 0 && row < g.height
}

// dotBits are the dots of a pattern of eight, by column and row.
var dotBits = [2][4]uint8{{0x01, 0x02, 0x04, 0x40}, {0x08, 0x10, 0x20, 0x80}}

// dot finds the cell of a dot and its bit; nil outside of the grid.
func (g *grid) dot(x, y int) (*cell, uint8) {
	if x < 0 || y < 0 || !g.within(x/g.set.across, y/g.set.down) {
		return nil, 0
	}
	return g.at(x/g.set.across, y/g.set.down), dotBits[x%g.set.across][y%g.set.down]
}

// speak writes words from a cell on, if all of them are free.
func (g *grid) speak(column, row int, text, ink string) {
	for c := uniseg.NewGraphemes(text); c.Next(); {
		if !g.within(column, row) {
			return
		}
		x := g.at(column, row)
		x.sign, x.ink, x.spoken = c.Str(), ink, true
		for k := 1; k < c.Width() && g.within(column+k, row); k++ {
			x := g.at(column+k, row)
			x.covered, x.spoken = true, true
		}
		column += c.Width()
	}
}

// row writes a row of cells, runs of one colour as one.
func (g *grid) row(o Options, row int) string {
	var b strings.Builder
	ink, run := "", ""
	for column := range g.width {
		x := g.at(column, row)
		if x.covered {
			continue
		}
		text, of := g.shown(x)
		if of != ink {
			b.WriteString(o.paint(ink, run))
			ink, run = of, ""
		}
		run += text
	}
	b.WriteString(o.paint(ink, run))
	return b.String()
}

// patterns is where Unicode's patterns of eight dots begin.
const patterns = 0x2800

// shown is what a cell shows, and its colour.
func (g *grid) shown(x *cell) (text, ink string) {
	switch dots := x.band | x.gate | x.line; {
	case x.sign != "":
		return x.sign, x.ink
	case dots == 0:
		return " ", ""
	case g.set.plain && x.line != 0 && g.lettered && x.lines != 0:
		return letterOf(bits.TrailingZeros64(x.lines)), x.ink
	case g.set.plain && x.line != 0:
		return "*", x.ink
	case g.set.plain && x.gate != 0:
		return "-", faint
	case g.set.plain:
		return ".", faint
	case x.line == 0:
		return string(rune(patterns + int(dots))), faint
	default:
		return string(rune(patterns + int(dots))), x.ink
	}
}

// scale maps a value to the dots of a grid: the ends of its axis to the middles of the outer rows.
type scale struct {
	low, high float64
	rows      int
	down      int
}

// dot is that of a value, from the top; far outside of the grid where the value is.
func (s scale) dot(value float64) int {
	fromFoot := (value - s.low) / (s.high - s.low) * float64(s.rows-1)
	return clampInt(math.Round((float64(s.rows-1)-fromFoot+0.5)*float64(s.down) - 0.5))
}

// row is that of a value, from the top.
func (s scale) row(value float64) int {
	return clampInt(math.Round(float64(s.rows-1) - (value-s.low)/(s.high-s.low)*float64(s.rows-1)))
}

// value is that in the middle of a dot.
func (s scale) value(dot int) float64 {
	fromFoot := float64(s.rows-1) + 0.5 - (float64(dot)+0.5)/float64(s.down)
	return s.low + fromFoot/float64(s.rows-1)*(s.high-s.low)
}

func clampInt(x float64) int {
	const far = 1 << 20
	if math.IsNaN(x) {
		return -far
	}
	return int(max(-far, min(x, far)))
}

// stretch maps times to the dots of a grid.
type stretch struct {
	from, to float64
	dots     int
}

func (s stretch) dot(at float64) int {
	return clampInt(math.Round((at - s.from) / (s.to - s.from) * float64(s.dots-1)))
}

func (s stretch) at(dot int) float64 {
	return s.from + float64(dot)/float64(max(1, s.dots-1))*(s.to-s.from)
}
