package sampler

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"
)

const (
	widening         = 1.4  // of the covariance: too wide a proposal wastes draws, too narrow a one misses some of the posterior
	degreesOfFreedom = 8.0  // of Student's distribution, whose tails are heavier than those of a posterior
	jitter           = 1e-3 // of each variance, added to it: a covariance of few draws is singular
)

// proposal is what the next round draws from.
func (r *run) proposal() (*distmv.StudentsT, error) {
	if r.s.Rounds == 0 && r.o.Start != nil {
		mean, cov, err := r.o.Start()
		if err != nil {
			return nil, err
		}
		return student(mean, cov, r.o)
	}
	s := Sample{Draws: r.s.Draws, Weights: tempered(r.s.Weights, r.enough())}
	return student(s.Mean(), s.covariance(), r.o)
}

func student(mean []float64, cov mat.Symmetric, o Options) (*distmv.StudentsT, error) {
	n := cov.SymmetricDim()
	wide := mat.NewSymDense(n, nil)
	wide.CopySym(cov)
	wide.ScaleSym(widening, wide)
	for k := range n {
		wide.SetSym(k, k, wide.At(k, k)*(1+jitter))
	}
	p, ok := distmv.NewStudentsT(mean, wide, degreesOfFreedom, o.Source)
	if !ok {
		return nil, errors.New("the covariance of the draws is not positive definite")
	}
	return p, nil
}

// tempered raises weights to a power of less than 1 where few bear all of it, the largest
// at which they have the effective sample size that is asked for. So a proposal goes
// towards the few step by step, and does not shrink to them.
func tempered(weights []float64, enough float64) []float64 {
	out := weights
	for power := 0.8; kishSize(out) < enough && power > leastPower; power *= 0.8 {
		logs := make([]float64, len(weights))
		for i, w := range weights {
			logs[i] = power * math.Log(max(w, math.SmallestNonzeroFloat64))
		}
		out = normalise(logs)
	}
	return out
}

// leastPower is where tempering ends: the weights are then as good as equal.
const leastPower = 0.01
