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
}

const reweightings = 12 // rounds of least squares, in which readings far off come to weigh less

// Linearise makes the forecasts and solves the problem. It gives work.ErrPool where the forecasts cost too much together.
func (t *Trial) Linearise(ctx context.Context) (Linearised, error) {
	s := searchOf(ctx, []*Trial{t}, Alone(t), 0)
	if err := s.begin(); err != nil {
		return Linearised{}, err
	}
	x := s.seats[0]
	return Linearised{x.here.forecast, t.reweighted(x.residuals, x.slopes, len(t.Axes)), s}, nil
}

// Mode gives the axes that the function Mode finds, and begins with the forecasts that are
// made already.
func (g Linearised) Mode() ([]float64, error) {
	err := g.search.down()
	return g.search.seats[0].z, err
}

// reweighted finds the mode by iteratively reweighted least squares, as the Student
// distribution weighs residuals, and gives each residual there in standard errors.
func (t *Trial) reweighted(base []float64, slopes [][]float64, dims int) []float64 {
	_, cov, off := t.straight(base, slopes, dims, -1)
	for i := range off {
		d := mat.NewVecDense(dims, slopes[i])
		off[i] /= math.Sqrt(1 + mat.Inner(d, cov, d))
	}
	return off
}

// straight finds the mode by what all readings but one say, -1 for none, with the covariance and
// the residuals there.
func (t *Trial) straight(base []float64, slopes [][]float64, dims, but int) (z *mat.VecDense, cov *mat.SymDense, off []float64) {
	z, off = mat.NewVecDense(dims, nil), append([]float64(nil), base...)
	for range reweightings {
		h, g := mat.NewSymDense(dims, nil), mat.NewVecDense(dims, nil)
		for k := range dims {
			h.SetSym(k, k, 1)
		}
		for i, r := range off {
			if i == but {
				continue
			}
			weight := t.Observations[i].pull(r)
			for k, d := range slopes[i] {
				g.SetVec(k, g.AtVec(k)-weight*d*base[i])
				for j := 0; j <= k; j++ {
					h.SetSym(k, j, h.At(k, j)+weight*d*slopes[i][j])
				}
			}
		}
		cov = invert(h)
		z.MulVec(cov, g)
		for i := range off {
			off[i] = base[i] + mat.Dot(z, mat.NewVecDense(dims, slopes[i]))
		}
	}
	return z, cov, off
}
