package sheet

import "math"

const rubWide = 1.15

// rub is what lies between finger and thumb after the inside of a kernel was rubbed out.
func rub(look Look) Picture {
	strokes := fingers()
	switch look {
	case RubGummy:
		strokes = append(gum(), strokes...)
	case RubGritty:
		strokes = append(strokes, grit()...)
	case RubChalky:
		strokes = append(strokes, chalk()...)
	}
	return Picture{Wide: rubWide, Strokes: strokes}
}

// fingers are a finger above and the thumb below, both from the left, their pads towards each other.
func fingers() []Stroke {
	return []Stroke{
		curve(outline, Dot{0.02, 0.05}, Dot{0.30, 0.04}, Dot{0.58, 0.06}, Dot{0.80, 0.13}, Dot{0.89, 0.25}, Dot{0.84, 0.36}, Dot{0.68, 0.39}, Dot{0.52, 0.35}, Dot{0.40, 0.30}, Dot{0.28, 0.31}, Dot{0.02, 0.33}),
		curve(thin, Dot{0.62, 0.072}, Dot{0.68, 0.130}, Dot{0.80, 0.185}, Dot{0.880, 0.205}), // its nail
		curve(outline, Dot{0.02, 0.95}, Dot{0.30, 0.97}, Dot{0.58, 0.96}, Dot{0.82, 0.90}, Dot{0.93, 0.78}, Dot{0.88, 0.67}, Dot{0.70, 0.62}, Dot{0.50, 0.64}, Dot{0.32, 0.70}, Dot{0.16, 0.70}, Dot{0.02, 0.67}),
		curve(thin, Dot{0.64, 0.950}, Dot{0.71, 0.885}, Dot{0.83, 0.830}, Dot{0.918, 0.815}),
	}
}

// gum is drawn out in threads between the pads.
func gum() []Stroke {
	strokes := []Stroke{}
	for _, x := range []float64{0.52, 0.64, 0.76} {
		strokes = append(strokes, shape(Black, 0,
			Dot{x - 0.055, 0.36}, Dot{x + 0.055, 0.375}, Dot{x + 0.018, 0.43}, Dot{x + 0.012, 0.505}, Dot{x + 0.020, 0.58}, Dot{x + 0.06, 0.645},
			Dot{x - 0.06, 0.650}, Dot{x - 0.020, 0.58}, Dot{x - 0.014, 0.505}, Dot{x - 0.020, 0.43}))
	}
	return strokes
}

// grit is hard corners that stay between the pads, some on their way down.
func grit() []Stroke {
	var strokes []Stroke
	for i, at := range []Dot{{0.46, 0.585}, {0.555, 0.575}, {0.655, 0.560}, {0.755, 0.575}, {0.845, 0.600}, {0.605, 0.480}, {0.710, 0.465}, {0.520, 0.470}, {0.970, 0.640}, {1.010, 0.780}} {
		size := []float64{0.044, 0.052, 0.040, 0.054, 0.036}[i%5]
		turn := float64(i) * 1.1
		var corners []Dot
		for k := range 4 {
			a := turn + float64(k)*math.Pi/2 + 0.35*float64(k%2)
			r := size * []float64{1, 0.72, 0.95, 0.8}[k]
			corners = append(corners, Dot{at.X + r*math.Cos(a), at.Y + r*math.Sin(a)})
		}
		strokes = append(strokes, Stroke{Dots: corners, Closed: true, Ink: Black})
	}
	return strokes
}

// chalk is a soft layer on both pads and fine dust between them and falling.
func chalk() []Stroke {
	strokes := []Stroke{
		shape(White, thin, Dot{0.40, 0.655}, Dot{0.52, 0.575}, Dot{0.66, 0.535}, Dot{0.80, 0.560}, Dot{0.93, 0.690}, Dot{0.86, 0.655}, Dot{0.70, 0.615}, Dot{0.54, 0.635}),
		shape(White, thin, Dot{0.50, 0.340}, Dot{0.60, 0.405}, Dot{0.72, 0.430}, Dot{0.84, 0.385}, Dot{0.87, 0.330}, Dot{0.80, 0.372}, Dot{0.68, 0.388}, Dot{0.58, 0.372}),
	}
	for i := range 60 {
		// spread so that no two dots fall together: the multiples of two irrational numbers
		u, v := math.Mod(float64(i)*0.7548777, 1), math.Mod(float64(i)*0.5698403, 1)
		at := Dot{0.50 + 0.36*u, 0.445 + 0.105*v}
		if i%3 == 2 {
			at = Dot{0.93 + 0.19*u, 0.52 + 0.44*v}
		}
		const r = 0.011
		strokes = append(strokes, Stroke{Dots: []Dot{{at.X - r, at.Y}, {at.X, at.Y - r}, {at.X + r, at.Y}, {at.X, at.Y + r}}, Closed: true, Ink: Black})
	}
	return strokes
}
