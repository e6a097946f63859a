package forecast

// along looks for the malt on one lower floor that comes out as it was supposed. Its exhaust
// hangs on its moisture above all, and its temperature goes along with that: so it is a root of one
// unknown, the miss of the moisture, by secants that are held in a bracket as soon as there is one
// (Illinois rule [dowell-jarratt-1971]). The temperature is supposed as it came of moistures like this.
type along struct {
	slope        float64 // of the miss; 0 where nothing is known of it
	drier, moist *tried  // came out moister than it was supposed, and drier
	last         *tried
}

// tried is malt that was supposed, and what came of it.
type tried struct {
	x, miss float64 // moisture as it was supposed, kg/kg, and by how much moister it came
	warm    float64 // °C as it came
}

func (f *along) forget() { f.drier, f.moist = nil, nil }

// next gives the next supposal, from one and what came of it.
func (f *along) next(malt, came []float64) []float64 {
	now, before := &tried{malt[0], came[0] - malt[0], came[1]}, f.last
	f.enclose(now)
	if f.last = now; before != nil && before.x != now.x {
		f.slope = (now.miss - before.miss) / (now.x - before.x)
	}
	next := []float64{came[0], came[1]}
	switch a, b := f.drier, f.moist; {
	case a != nil && b != nil && a.miss > b.miss:
		share := a.miss / (a.miss - b.miss)
		next[0], next[1] = a.x+share*(b.x-a.x), a.warm+share*(b.warm-a.warm)
	case f.slope < 0:
		next[0] = now.x - now.miss/f.slope
	}
	return possible(next)
}

// enclose keeps a supposal as an end of the bracket. Where the same end moves twice in turn the
// other one counts for half, or it would stay for ever; an end that is no end any more goes.
func (f *along) enclose(now *tried) {
	end, other := &f.drier, &f.moist
	if now.miss < 0 {
		end, other = &f.moist, &f.drier
	}
	if *end != nil && *end == f.last && *other != nil {
		less, part := **other, 1-now.miss/f.last.miss
		if part <= 0 {
			part = 0.5
		}
		less.miss *= part
		*other = &less
	}
	if *end = now; f.drier != nil && f.moist != nil && f.drier.x >= f.moist.x {
		*other = nil
	}
}
