package evidence

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"maltwright/lang/model"
)

// Foretell gives what the process and all other readings say that the i-th reading should have
// been, in the units of its observation, and the standard deviation of that with the error of
// such a reading in it. It is false where no forecast has something for it.
func (g Linearised) Foretell(i int) (value, sd float64, ok bool) {
	x := g.search.seats[0]
	o := &x.trial.Observations[i]
	if math.IsNaN(o.Expect(g.Centre, 0)) {
		return 0, 0, false
	}
	dims := len(x.trial.Axes)
	_, cov, off := x.trial.straight(x.residuals, x.slopes, dims, i)
	d := mat.NewVecDense(dims, x.slopes[i])
	return o.Value - off[i]*o.Error, o.Error * math.Sqrt(1+mat.Inner(d, cov, d)), true
}

// manyReadings is how many there are from which on none is foretold that lies near what the others say:
// each costs a fit of all of them. nearBy is how near, in standard deviations: half as far as any is doubted, for
// without it others may weigh otherwise.
const (
	manyReadings = 100
	nearBy       = 1.0
)

// Near tells of one of many readings that it lies so near what the others say that nobody need ask what they
// foretell of it. Of few it is false.
func (g Linearised) Near(i int) bool {
	return len(g.apart) > manyReadings && math.Abs(g.apart[i]) < nearBy
}

// Likely are the axes that fit the readings best by the straight lines, none farther out than a
// fit follows it. They cost no forecast.
func (g Linearised) Likely() []float64 {
	x := g.search.seats[0]
	dims := len(x.trial.Axes)
	at, _, _ := x.trial.straight(x.residuals, x.slopes, dims, -1)
	z := make([]float64, dims)
	for k := range z {
		z[k] = min(max(at.AtVec(k), -farthest), farthest)
	}
	return z
}

// Fits gives by how much later, s, or earlier than it was taken a reading that grows would fit the
// course of a trial at a point of its axes: what it reads was so then, or will be. It looks two
// days about it, every two hours, and is false where nothing of that fits.
func (t *Trial) Fits(i int, z []float64) (later float64, ok bool) {
	m := &t.Observations[i]
	if m.Reading.When().IsZero() {
		return 0, false
	}
	at := t.since(m.Reading.When())
	var times []float64
	for off := -about; off <= about; off += aboutStep {
		if at+off >= 0 {
			times = append(times, at+off)
		}
	}
	open := *t
	open.course.Ends, open.course.Still = nil, nil // what the record says of the end of the growing would end it
	for _, e := range t.course.Ends {
		if e.At < at && e.Kind != string(model.GerminateStage) {
			open.course.Ends = append(open.course.Ends, e)
		}
	}
	open.course.Open = at + about
	seen, err := open.looked(z, times)
	if err != nil {
		return 0, false
	}
	best := math.Inf(1)
	for k := 1; k < len(seen); k++ {
		a, b := m.expectOf(&seen[k-1], 0), m.expectOf(&seen[k], 0)
		if !(a <= m.Value && m.Value <= b) || !(b > a) {
			continue
		}
		off := times[k-1] + (m.Value-a)/(b-a)*(times[k]-times[k-1]) - at
		if math.Abs(off) < math.Abs(best) {
			best = off
		}
	}
	return best, !math.IsInf(best, 0)
}

// How far about a reading Fits looks, and how closely, s.
const about, aboutStep = 48 * hour, 2 * hour
