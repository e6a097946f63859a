package evidence

import (
	"cmp"
	"context"
	"math"

	"gonum.org/v1/gonum/mat"

	"maltwright/sim/ensemble"
)

// Estimate is the mode of the posterior of the axes.
type Estimate struct {
	Z    []float64     // in standard deviations of what is usual
	Cov  *mat.SymDense // of the posterior, by the curvature at the mode
	Cost float64       // minus the logarithm of the posterior, but for a constant

	Residuals [][]float64 // of each trial, there
}

// Shared says which axis of the estimate each axis of a trial is.
type Shared [][]int

// Alone is that of a single trial.
func Alone(t *Trial) Shared {
	axes := make([]int, len(t.Axes))
	for i := range axes {
		axes[i] = i
	}
	return Shared{axes}
}

const (
	stride    = 0.25 // of the finite differences, in standard deviations
	rounds    = 6    // of Gauss and Newton's method at the most
	halvings  = 4    // of a step that makes it worse
	goodCost  = 0.02 // a round that gains less is the last
	farthest  = 3.0  // standard deviations to which an axis is followed
	patchable = 1e-9 // added to the curvature's diagonal
)

// Fit finds the axes that agree best with what was read in all trials and with what
// is usual. The trials' forecasts run on so many workers, 0 for one a core. It gives
// the error of the context when it is cancelled, and that of a forecast which cannot
// begin.
func Fit(ctx context.Context, trials []*Trial, shared Shared, workers int) (Estimate, error) {
	s := searchOf(ctx, trials, shared, workers)
	m, err := s.mode()
	if err != nil {
		return Estimate{}, err
	}
	if m.moved == nil {
		if m.moved, err = s.around(m.z, m.base); err != nil {
			return Estimate{}, err
		}
	}
	h, _ := s.curvature(m.z, m.base, m.moved)
	e := Estimate{Z: m.z, Cov: inverse(h), Cost: m.cost}
	for _, p := range m.base {
		e.Residuals = append(e.Residuals, p.residuals)
	}
	return e, nil
}

func searchOf(ctx context.Context, trials []*Trial, shared Shared, workers int) *search {
	s := &search{ctx: ctx, trials: trials, shared: shared, workers: workers}
	for _, axes := range shared {
		for _, k := range axes {
			s.dims = max(s.dims, k+1)
		}
	}
	return s
}

type search struct {
	ctx     context.Context
	trials  []*Trial
	shared  Shared
	dims    int
	workers int
}

// own picks the axes of one trial out of all.
func (s *search) own(trial int, z []float64) []float64 {
	out := make([]float64, len(s.shared[trial]))
	for i, k := range s.shared[trial] {
		out[i] = z[k]
	}
	return out
}

func (s *search) cost(z []float64, found []point) float64 {
	sum := -LogPrior(z)
	for b, p := range found {
		sum -= s.trials[b].LogLikelihood(p.residuals)
	}
	return sum
}

// at is every trial at z.
func (s *search) at(z []float64) ([]point, error) {
	out := make([]point, len(s.trials))
	err := ensemble.Each(s.ctx, s.workers, len(s.trials), func(b int) (err error) {
		out[b], err = s.trials[b].point(s.own(b, z))
		return err
	})
	return out, cmp.Or(err, s.dry())
}

// dry tells that the forecasts so far have used up the pool of a trial, whichever of
// them it was.
func (s *search) dry() error {
	for _, t := range s.trials {
		if err := t.pool.Err(); err != nil {
			return err
		}
	}
	return nil
}

// around is every trial with each of its axes moved from z, one after the other.
func (s *search) around(z []float64, base []point) ([]point, error) {
	type job struct{ trial, axis int }
	var jobs []job
	for b, axes := range s.shared {
		for i := range axes {
			jobs = append(jobs, job{b, i})
		}
	}
	moved := make([]point, len(jobs))
	err := ensemble.Each(s.ctx, s.workers, len(jobs), func(n int) (err error) {
		j := jobs[n]
		moved[n], err = s.trials[j.trial].moved(base[j.trial], s.own(j.trial, z), j.axis)
		return err
	})
	return moved, cmp.Or(err, s.dry())
}

// curvature gives the Gauss-Newton matrix of the cost at z, and its gradient.
func (s *search) curvature(z []float64, base, moved []point) (*mat.SymDense, []float64) {
	h, g := mat.NewSymDense(s.dims, nil), append([]float64(nil), z...)
	for k := range s.dims {
		h.SetSym(k, k, 1+patchable)
	}
	n := 0
	for b, axes := range s.shared {
		slopes := moved[n : n+len(axes)]
		n += len(axes)
		for item, r := range base[b].residuals {
			weight := s.trials[b].Observations[item].pull(r)
			for i, k := range axes {
				d := slope(r, slopes[i].residuals[item])
				g[k] += weight * r * d
				for j := 0; j <= i; j++ {
					more := weight * d * slope(r, slopes[j].residuals[item])
					h.SetSym(k, axes[j], h.At(k, axes[j])+more)
				}
			}
		}
	}
	return h, g
}

// slope is that of a residual; nil where a forecast has nothing for the reading, which
// is a cliff and no slope.
func slope(from, to float64) float64 {
	if from == unhad || to == unhad {
		return 0
	}
	return (to - from) / stride
}

// stepped goes a Newton step down, or a part of it.
func (s *search) stepped(z []float64, h *mat.SymDense, g []float64, cost float64) ([]float64, []point, float64, error) {
	var factor mat.Cholesky
	step := mat.NewVecDense(s.dims, nil)
	if !factor.Factorize(h) || factor.SolveVecTo(step, mat.NewVecDense(s.dims, g)) != nil {
		return z, nil, cost, nil
	}
	part := 1.0
	for range halvings {
		next := make([]float64, s.dims)
		for k := range next {
			next[k] = min(max(z[k]-part*step.AtVec(k), -farthest), farthest)
		}
		found, err := s.at(next)
		if err != nil {
			return z, nil, cost, err
		}
		if c := s.cost(next, found); c < cost {
			return next, found, c, nil
		}
		part /= 2
	}
	return z, nil, cost, nil
}

// inverse is that of a curvature; where rounding has spoilt it, each axis is taken alone.
func inverse(h *mat.SymDense) *mat.SymDense {
	n := h.SymmetricDim()
	out := mat.NewSymDense(n, nil)
	var factor mat.Cholesky
	if factor.Factorize(h) && factor.InverseTo(out) == nil {
		return out
	}
	for k := range n {
		out.SetSym(k, k, 1/math.Max(h.At(k, k), 1))
	}
	return out
}
