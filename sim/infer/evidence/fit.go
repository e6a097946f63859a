package evidence

import (
	"context"

	"gonum.org/v1/gonum/mat"
)

// Estimate is the mode of the posterior of the axes of one trial.
type Estimate struct {
	Z   []float64     // in standard deviations of what is usual
	Cov *mat.SymDense // of the posterior, by the curvature at the mode
}

// Fit finds the axes that agree best with what was read in a trial and with what is usual.
// Its forecasts run on so many workers, 0 for one a core. It gives the error of the context
// when it is cancelled, and that of a forecast which cannot begin.
func Fit(ctx context.Context, t *Trial, workers int) (Estimate, error) {
	s := searchOf(ctx, []*Trial{t}, Alone(t), workers)
	s.exact = true
	if err := s.down(); err != nil {
		return Estimate{}, err
	}
	s.settle()
	n := s.normal(s.seats)
	return Estimate{Z: s.seats[0].z, Cov: inverse(&n.parts[0].own)}, nil
}

// Mode gives the axes that Fit finds, without how well they are known, which costs forecasts
// of its own, and as near as the fit of a single record needs.
func Mode(ctx context.Context, t *Trial) ([]float64, error) {
	s := searchOf(ctx, []*Trial{t}, Alone(t), 0)
	err := s.down()
	return s.seats[0].z, err
}

// invert is the inverse of a curvature; where rounding has spoilt it, each axis is taken alone.
func invert(h *mat.SymDense) *mat.SymDense {
	var factor mat.Cholesky
	if factor.Factorize(h) {
		return inverse(&factor)
	}
	out := mat.NewSymDense(h.SymmetricDim(), nil)
	for k := range h.SymmetricDim() {
		out.SetSym(k, k, 1/max(h.At(k, k), 1))
	}
	return out
}

// inverse is that of a factorised curvature.
func inverse(factor *mat.Cholesky) *mat.SymDense {
	out := mat.NewSymDense(factor.SymmetricDim(), nil)
	if factor.InverseTo(out) == nil {
		return out
	}
	for k := range factor.SymmetricDim() { // rounding has spoilt it
		out.SetSym(k, k, 1)
	}
	return out
}
