package evidence

import (
	"math"

	"gonum.org/v1/gonum/mat"
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
