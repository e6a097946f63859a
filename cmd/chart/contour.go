package chart

import "math"

// grid is values at the crossings of evenly spaced lines, a row for each y.
type grid struct {
	x0, y0, dx, dy float64
	value          [][]float64
}

func (g grid) at(i, j int) XY { return XY{g.x0 + float64(i)*g.dx, g.y0 + float64(j)*g.dy} }

// edgeOf is the side of a cell, by the crossing it begins at and its direction.
type edgeOf struct {
	i, j int
	down bool
}

// contours are the lines along which the values of a grid are at a level: cell by cell the two or four sides
// that it crosses are found (marching squares), then joined from side to side. Cells with a corner that is not known have none.
func (g grid) contours(level float64) (lines [][]XY) {
	next := map[edgeOf][]edgeOf{}
	var order []edgeOf
	join := func(a, b edgeOf) {
		for _, e := range []edgeOf{a, b} {
			if next[e] == nil {
				order = append(order, e)
			}
		}
		next[a], next[b] = append(next[a], b), append(next[b], a)
	}
	for j := 0; j+1 < len(g.value); j++ {
		for i := 0; i+1 < len(g.value[j]); i++ {
			g.cell(i, j, level, join)
		}
	}
	used := map[[2]edgeOf]bool{}
	walk := func(from edgeOf) {
		line, at := []XY{g.cross(from, level)}, from
		for moved := true; moved; {
			moved = false
			for _, to := range next[at] {
				if !used[[2]edgeOf{at, to}] {
					used[[2]edgeOf{at, to}], used[[2]edgeOf{to, at}] = true, true
					line, at, moved = append(line, g.cross(to, level)), to, true
					break
				}
			}
		}
		if len(line) > 1 {
			lines = append(lines, line)
		}
	}
	for _, e := range order { // open lines first, from their ends
		if len(next[e]) == 1 {
			walk(e)
		}
	}
	for _, e := range order {
		walk(e)
	}
	return lines
}

// cell joins the sides of a cell that a level crosses. Where all four are crossed its middle tells which belong together.
func (g grid) cell(i, j int, level float64, join func(a, b edgeOf)) {
	a, b, c, d := g.value[j][i], g.value[j][i+1], g.value[j+1][i+1], g.value[j+1][i]
	if !known(a) || !known(b) || !known(c) || !known(d) {
		return
	}
	over := func(v float64) bool { return v >= level }
	var sides []edgeOf
	add := func(u, v float64, e edgeOf) {
		if over(u) != over(v) {
			sides = append(sides, e)
		}
	}
	add(a, b, edgeOf{i, j, false})
	add(b, c, edgeOf{i + 1, j, true})
	add(d, c, edgeOf{i, j + 1, false})
	add(a, d, edgeOf{i, j, true})
	switch len(sides) {
	case 2:
		join(sides[0], sides[1])
	case 4:
		if over(a) == over((a+b+c+d)/4) {
			join(sides[0], sides[1])
			join(sides[2], sides[3])
		} else {
			join(sides[0], sides[3])
			join(sides[1], sides[2])
		}
	}
}

// cross is where a level crosses a side.
func (g grid) cross(e edgeOf, level float64) XY {
	i, j := e.i+1, e.j
	if e.down {
		i, j = e.i, e.j+1
	}
	u, v := g.value[e.j][e.i], g.value[j][i]
	share := math.Min(math.Max((level-u)/(v-u), 0), 1)
	a, b := g.at(e.i, e.j), g.at(i, j)
	return XY{a.X + share*(b.X-a.X), a.Y + share*(b.Y-a.Y)}
}
