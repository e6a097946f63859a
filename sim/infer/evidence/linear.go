package evidence

import (
	"context"
	"math"

	"gonum.org/v1/gonum/mat"

	"maltwright/sim/forecast"
)

// Linearised is the posterior of a record as if every residual went in a straight line
// with every axis: of one forecast, and one more for each axis. It tells which readings a
// fit should look at; Fit itself costs some ten times as many forecasts.
type Linearised struct {
	Centre    *forecast.Forecast // of the usual batch that keeps to the record
	Residuals []float64          // of each reading at the mode, in its own error and that of what the others make likely

	search *search
	apart  []float64 // of each reading from what the others say, in standard deviations, with each weighing as it does at the mode
}

const reweightings = 12 // rounds of least squares, in which readings far off come to weigh less

// Linearise makes the forecasts and solves the problem. It gives work.ErrPool where the forecasts cost too much together.
func (t *Trial) Linearise(ctx context.Context) (Linearised, error) {
	s := searchOf(ctx, []*Trial{t}, Alone(t), 0)
	if err := s.begin(); err != nil {
		return Linearised{}, err
	}
	x := s.seats[0]
	off, apart := t.reweighted(x.residuals, x.slopes, len(t.Axes))
	return Linearised{x.here.forecast, off, s, apart}, nil
}

// Mode gives the axes that the function Mode finds, and begins with the forecasts that are
// made already.
func (g Linearised) Mode() ([]float64, error) {
	err := g.search.down()
	return g.search.seats[0].z, err
}

// reweighted finds the mode by iteratively reweighted least squares, as the Student
// distribution weighs residuals, and gives each residual there in standard errors; and how far each reading
// lies from what the others say, as if they weighed the same without it: of a residual r of weight w at which
// the mode has the variance a, the others alone have the variance s = a/(1 - w a), and it lies r (1 + w s) off.
func (t *Trial) reweighted(base []float64, slopes [][]float64, dims int) (off, apart []float64) {
	_, cov, off := t.straight(base, slopes, dims, -1)
	apart = make([]float64, len(off))
	for i, r := range off {
		d := mat.NewVecDense(dims, slopes[i])
		a, w := mat.Inner(d, cov, d), t.Observations[i].pull(r)
		s := a / max(1-w*a, 1e-9)
		apart[i] = r * (1 + w*s) / math.Sqrt(1+s)
		off[i] = r / math.Sqrt(1+a)
	}
	return off, apart
}

// straight finds the mode by what all readings but one say, -1 for none, with the covariance and
// the residuals there.
func (t *Trial) straight(base []float64, slopes [][]float64, dims, but int) (z *mat.VecDense, cov *mat.SymDense, off []float64) {
	z, off = mat.NewVecDense(dims, nil), append([]float64(nil), base...)
	for range reweightings {
		curve, g := make([]float64, dims*dims), mat.NewVecDense(dims, nil) // the upper half of the one, a row each
		pulls := g.RawVector().Data
		for k := range dims {
			curve[k*dims+k] = 1
		}
		for i, r := range off {
			if i == but {
				continue
			}
			weight := t.Observations[i].pull(r)
			for k, d := range slopes[i] {
				pulls[k] -= weight * d * base[i]
				for j := 0; j <= k; j++ {
					curve[j*dims+k] += weight * d * slopes[i][j]
				}
			}
		}
		cov = invert(mat.NewSymDense(dims, curve))
		z.MulVec(cov, g)
		for i := range off {
			off[i] = base[i] + mat.Dot(z, mat.NewVecDense(dims, slopes[i]))
		}
	}
	return z, cov, off
}
