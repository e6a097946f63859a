package evidence

import (
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// Together is the mode of the posterior of several trials with axes in common, and what
// the forecasts about it tell besides, as if every residual went in a straight line with
// every axis.
type Together struct {
	search *search
	normal normal
	cov    *mat.SymDense // of the shared axes; nil where there are none
}

// FitTogether fits trials with axes in common. After each forecast of a round it calls
// tell, if there is one, with how many of the round are done. Errors are those of Fit.
func FitTogether(ctx context.Context, trials []*Trial, c Common, workers int, tell func(done, of int)) (*Together, error) {
	c.Scatter = slices.Clone(c.Scatter)
	t := &Together{search: searchOf(ctx, trials, c, workers)}
	t.search.tell, t.search.exact = tell, true
	return t, t.fit()
}

func (t *Together) fit() error {
	if err := t.search.down(); err != nil {
		return err
	}
	t.search.settle()
	t.normal = t.search.normal(t.search.seats)
	if t.cov = nil; len(t.search.mean) > 0 {
		t.cov = inverse(&t.normal.shared)
	}
	return nil
}

// Mean is where a shared axis most likely lies.
func (t *Together) Mean(k int) float64 { return t.search.mean[k] }

// Cov is the covariance of the errors of two shared axes.
func (t *Together) Cov(k, l int) float64 { return t.cov.At(k, l) }

// Scatter is by how much the trials scatter about a shared axis, as a standard deviation.
func (t *Together) Scatter(k int) float64 { return t.search.common.Scatter[k] }

// Moves tells whether a standard deviation of an axis moves a reading of the trial by so
// much, in the reading's own errors.
func (t *Together) Moves(trial, axis int, much float64) bool {
	return slices.ContainsFunc(t.search.seats[trial].slopes, func(row []float64) bool { return math.Abs(row[axis]) >= much })
}

// OwnCov is the covariance of an own axis of a trial with each of the shared, and its
// variance.
func (t *Together) OwnCov(trial, axis int) (shared []float64, variance float64) {
	p, axes := &t.normal.parts[trial], t.search.common.Axes[trial]
	shared = make([]float64, len(t.search.mean))
	for k := range shared {
		for j, l := range axes {
			if l != Own {
				shared[k] -= p.give.At(axis, j) * t.cov.At(l, k)
			}
		}
	}
	variance = inverse(&p.own).At(axis, axis)
	for j, l := range axes {
		if l != Own {
			variance -= p.give.At(axis, j) * shared[l]
		}
	}
	return shared, variance
}

// Without is where the shared axes would lie if one trial were not there, and the variances of
// their errors: Newton's step from the mode by what the others pull. It makes no forecast,
// and is right as far as residuals go in straight lines.
func (t *Together) Without(trial int) (mean, variance []float64) {
	if len(t.search.mean) == 0 {
		return nil, nil
	}
	n := len(t.search.mean)
	h, g := mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
	t.normal.shared.ToSym(h)
	g.CopyVec(t.normal.slope)
	t.normal.parts[trial].add(h, g, t.search.common.Axes[trial], -1)
	mean, variance = slices.Clone(t.search.mean), make([]float64, n)
	var factor mat.Cholesky
	step := mat.NewVecDense(n, nil)
	if !factor.Factorize(h) || factor.SolveVecTo(step, g) != nil {
		return mean, variance
	}
	cov := inverse(&factor)
	for k, p := range t.search.common.Prior {
		mean[k], variance[k] = within(mean[k]-step.AtVec(k), p.Mean, p.SD), cov.At(k, k)
	}
	return mean, variance
}

// Single is what the readings of one trial say of its axes by themselves and what is usual,
// without the other trials, and the standard errors.
func (t *Together) Single(trial int) (z, sd []float64) {
	x, p := t.search.seats[trial], &t.normal.parts[trial]
	n := len(x.z)
	h, g := mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
	h.CopySym(p.h)
	for i := range n {
		h.SetSym(i, i, h.At(i, i)+1+patchable)
		g.SetVec(i, p.g.AtVec(i)+x.z[i])
	}
	z, sd = slices.Clone(x.z), make([]float64, n)
	var factor mat.Cholesky
	step := mat.NewVecDense(n, nil)
	if !factor.Factorize(h) || factor.SolveVecTo(step, g) != nil {
		return z, sd
	}
	cov := inverse(&factor)
	for i := range z {
		z[i], sd[i] = within(z[i]-step.AtVec(i), 0, 1), math.Sqrt(cov.At(i, i))
	}
	return z, sd
}
