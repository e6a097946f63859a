package sheet

import "math"

// A kernel lies on its crease, which is not seen, the back up and the root end to the
// left. Places on it are shares of its length: along it from the base, and across it towards the back.
const (
	kernelPicture = 2.36 // how wide a picture of one is
	kernelBase    = 0.54 // where it begins
	kernelLong    = 1.44
	kernelMiddle  = 0.47 // how far down its middle lies
)

// on is the dot at a place of the kernel.
func on(along, across float64) Dot {
	return Dot{kernelBase + along*kernelLong, kernelMiddle - across*kernelLong}
}

// places are the dots at places, along and across.
func places(list ...[2]float64) []Dot {
	dots := make([]Dot, len(list))
	for i, p := range list {
		dots[i] = on(p[0], p[1])
	}
	return dots
}

// growth is how long shoot and rootlets are, in shares of the kernel, where a class of a count ends.
var growth = map[Look][2]float64{
	Chit: {0, 0.055}, NoShoot: {0, 0.16}, Quarter: {0.25, 0.20}, Half: {0.5, 0.27}, ThreeQuarters: {0.75, 0.31},
	Whole: {1, 0.33}, Overgrown: {1.25, 0.33},
}

// kernel is a grain with the shoot as long as a class of a count takes it at the most. In
// grain with a husk the shoot lies under it, as a ridge along the back; a naked kernel has it outside, where it
// is measured against the kernel in the same way.
func kernel(look Look, naked bool) Picture {
	grown, body := growth[look], huskOutline
	if naked {
		body = nakedOutline
	}
	strokes := append(rootlets(grown[1]), body()...)
	if grown[0] > 0 {
		strokes = append(strokes, acrospire(grown[0], naked))
	}
	if look != Chit {
		strokes = append(strokes, quarters()...)
	}
	return Picture{Wide: kernelPicture, Strokes: strokes}
}

// huskOutline is the kernel in its husk: slender, pointed, with the stump of the awn
// and the nerves of the husk.
func huskOutline() []Stroke {
	return []Stroke{
		line(outline, places([2]float64{0.97, 0.012}, [2]float64{1.075, 0.030})...),
		line(outline, places([2]float64{0.97, -0.012}, [2]float64{1.055, -0.012})...),
		shape(White, outline, places([2]float64{0, 0}, [2]float64{0.06, 0.100}, [2]float64{0.22, 0.178}, [2]float64{0.42, 0.205}, [2]float64{0.64, 0.172}, [2]float64{0.86, 0.085}, [2]float64{1, 0},
			[2]float64{0.84, -0.085}, [2]float64{0.60, -0.150}, [2]float64{0.35, -0.165}, [2]float64{0.10, -0.110})...),
		curve(thin, places([2]float64{0.10, -0.055}, [2]float64{0.35, -0.095}, [2]float64{0.62, -0.085}, [2]float64{0.88, -0.028})...),
		curve(thin, places([2]float64{0.08, -0.010}, [2]float64{0.35, -0.015}, [2]float64{0.62, -0.015}, [2]float64{0.90, -0.005})...),
	}
}

// nakedOutline is a kernel as wheat and rye have it: plump and blunt, with a brush of hairs at the tip.
func nakedOutline() []Stroke {
	strokes := []Stroke{
		shape(White, outline, places([2]float64{0, 0}, [2]float64{0.05, 0.110}, [2]float64{0.22, 0.185}, [2]float64{0.45, 0.200}, [2]float64{0.72, 0.160}, [2]float64{0.93, 0.080}, [2]float64{1, 0},
			[2]float64{0.93, -0.090}, [2]float64{0.68, -0.165}, [2]float64{0.38, -0.180}, [2]float64{0.10, -0.120})...),
		curve(thin, places([2]float64{0.02, 0.020}, [2]float64{0.10, 0.035}, [2]float64{0.20, 0.100}, [2]float64{0.25, 0.180})...), // the germ
	}
	for i := range 5 {
		across := 0.025 * float64(i-2)
		strokes = append(strokes, line(thin, places([2]float64{0.985, across}, [2]float64{1.065, 1.5 * across})...))
	}
	return strokes
}

// acrospire is the shoot from the germ on along the back, inked, tapered at its tip. A
// part of the kernel's length is measured along the kernel, not along the bend of the back.
func acrospire(share float64, naked bool) Stroke {
	at := []float64{0, 0.06, 0.15, 0.30, 0.45, 0.60, 0.75, 0.90, 1, 1.3}
	across := []float64{0.030, 0.062, 0.102, 0.136, 0.142, 0.127, 0.092, 0.049, 0.030, 0.085}
	half := 0.026
	if naked {
		across = []float64{0.060, 0.130, 0.182, 0.232, 0.246, 0.232, 0.206, 0.170, 0.150, 0.160}
		half = 0.028
	}
	const pieces = 12
	var above, below []Dot
	for i := range pieces + 1 {
		s := share * float64(i) / pieces
		// blunt at the germ, pointed at the tip
		h := half * math.Min(1, math.Sqrt((share-s)/0.14)) * math.Min(1, 0.55+s/0.12)
		middle := between(at, across, s)
		above = append(above, on(s, middle+h))
		below = append([]Dot{on(s, middle-h)}, below...)
	}
	return shape(Black, 0, append(above, below[1:]...)...)
}

// between is the value at x of the line through the dots (at, value); the last one beyond its end.
func between(at, value []float64, x float64) float64 {
	for i := 1; i < len(at); i++ {
		if x <= at[i] {
			return value[i-1] + (value[i]-value[i-1])*(x-at[i-1])/(at[i]-at[i-1])
		}
	}
	return value[len(value)-1]
}

// rootlets come out at the base, so long as a share of the kernel. Very short they are one: the chit.
func rootlets(share float64) []Stroke {
	if share < 0.1 {
		return []Stroke{shape(White, outline, places([2]float64{0.02, 0.040}, [2]float64{-share, 0.028}, [2]float64{-share, -0.028}, [2]float64{0.02, -0.040})...)}
	}
	var strokes []Stroke
	for i, fall := range []float64{0.30, 0.02, -0.28, -0.62, -1.0} { // how much each rises or falls on its way
		long := share * []float64{0.84, 1, 0.92, 1, 0.72}[i] / math.Hypot(1, fall)
		sway := 0.018 * float64(1-2*(i%2))
		from := 0.014 * float64(2-i)
		strokes = append(strokes, curve(1.6*thin, places([2]float64{0.02, from},
			[2]float64{-0.33 * long, from + 0.22*fall*long + sway},
			[2]float64{-0.68 * long, from + 0.62*fall*long - sway},
			[2]float64{-long, from + fall*long + 0.5*sway})...))
	}
	return strokes
}

// quarters are a rule below the kernel with a mark at each quarter of its length.
func quarters() []Stroke {
	const across = -0.285
	strokes := []Stroke{line(thin, on(0, across), on(1, across))}
	for i := range 5 {
		up := 0.030
		if i%4 == 0 {
			up = 0.055
		}
		along := float64(i) / 4
		strokes = append(strokes, line(thin, on(along, across), on(along, across+up)))
	}
	return strokes
}
