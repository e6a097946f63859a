package sheet

// frontThrough is the look of the break: the air that leaves the bed fogs a cold glass
// before it, and no longer after it.
func frontThrough() Picture {
	strokes := append(overBed(0), overBed(1.25)...)
	// fog, on the left glass alone
	for i := range 5 {
		x := 0.32 + 0.11*float64(i)
		for k := range 3 {
			y := 0.13 + 0.075*float64(k) + 0.03*float64(i%2)
			strokes = append(strokes, shape(Black, 0, Dot{x - 0.013, y}, Dot{x, y - 0.013}, Dot{x + 0.013, y}, Dot{x, y + 0.02}))
		}
	}
	// from the one to the other
	strokes = append(strokes, line(outline, Dot{1.11, 0.5}, Dot{1.29, 0.5}), line(outline, Dot{1.22, 0.44}, Dot{1.29, 0.5}, Dot{1.22, 0.56}))
	return Picture{Wide: 2.4, Strokes: strokes}
}

// overBed is a glass over a bed, with the air that rises from it, so far to the right.
func overBed(right float64) []Stroke {
	at := func(x, y float64) Dot { return Dot{right + x, y} }
	strokes := []Stroke{
		{Dots: []Dot{at(0.22, 0.06), at(0.86, 0.06), at(0.86, 0.36), at(0.22, 0.36)}, Closed: true, Ink: White, Thick: outline},
		line(outline, at(0.05, 0.72), at(0.05, 0.97), at(1.03, 0.97), at(1.03, 0.72)),
	}
	for i := range 3 {
		x := 0.32 + 0.22*float64(i)
		strokes = append(strokes, curve(1.4*thin, at(x, 0.68), at(x+0.03, 0.61), at(x-0.03, 0.52), at(x, 0.42)),
			line(1.4*thin, at(x-0.035, 0.47), at(x, 0.42), at(x+0.035, 0.47)))
	}
	for row := range 2 {
		for i := range 8 - row {
			x, y := 0.13+0.115*float64(i)+0.057*float64(row), 0.90-0.105*float64(row)
			strokes = append(strokes, shape(White, thin, at(x-0.05, y), at(x, y-0.036), at(x+0.05, y), at(x, y+0.036)))
		}
	}
	return strokes
}
