package chart

import "math"

// thinned leaves of a line what can be seen of it: in each px of its width the lowest and the highest point, both
// ends, and no point that lies on the way between its neighbours.
func thinned(points []XY) []XY {
	if len(points) < 3 {
		return points
	}
	first, last := points[0].X, points[len(points)-1].X
	if float64(len(points)) > 2*(math.Abs(last-first)+2) {
		points = extremes(points)
	}
	return straight(points, 0.06)
}

// extremes keeps two points of every px.
func extremes(points []XY) (kept []XY) {
	kept = append(kept, points[0])
	for i := 1; i < len(points)-1; {
		low, high, j := i, i, i
		for ; j < len(points)-1 && math.Floor(points[j].X) == math.Floor(points[i].X); j++ {
			if points[j].Y < points[low].Y {
				low = j
			}
			if points[j].Y > points[high].Y {
				high = j
			}
		}
		kept = append(kept, points[min(low, high)])
		if low != high {
			kept = append(kept, points[max(low, high)])
		}
		i = j
	}
	return append(kept, points[len(points)-1])
}

// straight leaves out points that lie within so many px of the line from the last one kept to a later one.
func straight(points []XY, within float64) []XY {
	kept := []XY{points[0]}
	for i := 0; i < len(points)-1; {
		j := i + 1
		for j+1 < len(points) && j-i < 64 && allNear(points[i:j+2], within) {
			j++
		}
		kept, i = append(kept, points[j]), j
	}
	return kept
}

// allNear tells whether all points between the ends lie near the line through them.
func allNear(points []XY, within float64) bool {
	a, b := points[0], points[len(points)-1]
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	for _, p := range points[1 : len(points)-1] {
		if long == 0 && (p != a) {
			return false
		}
		if off := math.Abs((b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X)); off > within*long {
			return false
		}
		if along := (p.X-a.X)*(b.X-a.X) + (p.Y-a.Y)*(b.Y-a.Y); along < 0 || along > long*long {
			return false
		}
	}
	return true
}
