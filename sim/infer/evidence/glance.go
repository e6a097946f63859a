package evidence

import (
	"cmp"
	"context"
	"math"

	"gonum.org/v1/gonum/mat"

	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

// Glance is a quick look at a record: one forecast, and one more for each axis, taken
// as if all went in straight lines between them. It tells which readings a fit should
// look at; Fit itself costs some ten times as many forecasts.
type Glance struct {
	Centre *forecast.Forecast // of the usual batch that keeps to the record
	Off    []float64          // how far each reading is from what the others make likely, in its own error and theirs
}

const (
	glanceStride = 0.5
	glances      = 12 // rounds in which readings far off come to count less
)

// Look takes the glance. It gives work.ErrPool where the forecasts cost too much together.
func (t *Trial) Look(ctx context.Context) (Glance, error) {
	dims := len(t.Axes)
	runs := make([]*forecast.Forecast, dims+1)
	residuals := make([][]float64, dims+1)
	err := ensemble.Each(ctx, 0, dims+1, func(k int) (err error) {
		z := make([]float64, dims)
		if k > 0 {
			z[k-1] = glanceStride
		}
		if runs[k], err = t.Run(z, true); err == nil {
			residuals[k] = t.Residuals(runs[k], z)
		}
		return err
	})
	if err = cmp.Or(err, t.pool.Err()); err != nil {
		return Glance{}, err
	}
	slopes := make([][]float64, len(t.Items))
	for i := range t.Items {
		slopes[i] = make([]float64, dims)
		for k := range dims {
			slopes[i][k] = slope(residuals[0][i], residuals[k+1][i]) * stride / glanceStride
		}
	}
	return Glance{runs[0], settled(residuals[0], slopes, dims)}, nil
}

// settled moves the axes in straight lines to where readings and what is usual agree
// best, by Student's distribution, and gives what is left of each residual.
func settled(base []float64, slopes [][]float64, dims int) []float64 {
	z, off := mat.NewVecDense(dims, nil), append([]float64(nil), base...)
	var cov *mat.SymDense
	for range glances {
		h, g := mat.NewSymDense(dims, nil), mat.NewVecDense(dims, nil)
		for k := range dims {
			h.SetSym(k, k, 1)
		}
		for i, r := range off {
			weight := (Freedom + 1) / (Freedom + r*r)
			for k, d := range slopes[i] {
				g.SetVec(k, g.AtVec(k)-weight*d*base[i])
				for j := 0; j <= k; j++ {
					h.SetSym(k, j, h.At(k, j)+weight*d*slopes[i][j])
				}
			}
		}
		cov = inverse(h)
		z.MulVec(cov, g)
		for i := range off {
			off[i] = base[i] + mat.Dot(z, mat.NewVecDense(dims, slopes[i]))
		}
	}
	for i := range off {
		d := mat.NewVecDense(dims, slopes[i])
		off[i] /= math.Sqrt(1 + mat.Inner(d, cov, d))
	}
	return off
}
