// Package sampler draws from a posterior by adaptive importance sampling.
//
// # How it works
//
// The posterior is known but for a constant: it is the prior times a likelihood that is
// dear to evaluate. The first draws are from the prior, by a Latin hypercube. Where few
// of them bear all the weight, a round of adaptation follows: a Student distribution is
// laid about the mean and covariance of what is known of the posterior, and as many
// draws are made from that (proposal.go). No draw is thrown away.
//
// All draws together are taken as one sample of a mixture: of each distribution that was
// drawn from, by the number of its draws (mixture.go). A draw weighs what the posterior
// is there over what the mixture is there, and all weights are made anew after each
// round [cornuet-2012]. Since the prior is part of the mixture, no weight is more than
// the likelihood there over its mean, however badly a proposal lies [owen-2000].
//
// How far the draws can be trusted is told by their effective sample size, how many
// draws of equal weight they are worth [kish-1965], and by the tail of their weights
// (tail.go): where a few draws bear nearly all of it, others that would bear more may be
// missing, and no number made of these few tells of them. So a run goes on while either is
// poor, and Sample.Trusted says whether it ended well.
//
// A posterior of several modes is found where the draws from the prior come near each of
// them, which they do in few dimensions; in many, a narrow mode may be missed.
package sampler

import (
	"errors"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
)

// Prior is a distribution whose quantiles are known, such as distmv.Normal.
type Prior interface {
	Dim() int
	LogProb(x []float64) float64
	Quantile(x, p []float64) []float64
}

// LogLikelihood gives the logarithm of the likelihood at each of some draws, but for a
// constant that is the same for all. A draw that cannot be has -Inf; NaN counts as that.
type LogLikelihood func(draws [][]float64) ([]float64, error)

// Options of a run; Draws and Source must be set.
type Options struct {
	Draws  int         // of each round, at least 2
	Source rand.Source // of all randomness, so that the same seed gives the same draws
	Share  float64     // of Draws that the effective sample size must come to; 0 is a half
	Rounds int         // of adaptation at the most; 0 is defaultRounds, negative none

	// Start says where the first round of adaptation draws, such as about a mode; nil
	// takes the weighted draws from the prior.
	Start func() (mean []float64, cov mat.Symmetric, err error)
	// Afford says whether another round is worth its price, when so many are done; nil
	// is yes.
	Afford func(rounds int) bool
}

// defaultRounds is how many rounds of adaptation there are at the most.
const defaultRounds = 4

// ErrNoLikelihood says that the likelihood is nil at every draw.
var ErrNoLikelihood = errors.New("no draw agrees with what was observed")

// Run draws from the posterior. It returns the errors of the likelihood and of Start, and
// ErrNoLikelihood.
func Run(prior Prior, likelihood LogLikelihood, o Options) (*Sample, error) {
	if o.Draws < 2 || o.Source == nil {
		return nil, errors.New("a sample takes two draws or more, and a source of randomness")
	}
	if o.Share == 0 {
		o.Share = 0.5
	}
	if o.Rounds == 0 {
		o.Rounds = defaultRounds
	}
	r := &run{prior: prior, likelihood: likelihood, o: o}
	if err := r.draw(prior, stratified(prior, o.Draws, o.Source)); err != nil {
		return nil, err
	}
	for r.s.Rounds < o.Rounds && r.poor() && (o.Afford == nil || o.Afford(r.s.Rounds)) {
		p, err := r.proposal()
		if err != nil {
			return nil, err
		}
		draws := make([][]float64, o.Draws)
		for i := range draws {
			draws[i] = p.Rand(nil)
		}
		if err := r.draw(p, draws); err != nil {
			return nil, err
		}
		r.s.Rounds++
	}
	return &r.s, nil
}

// run is one run of the sampler.
type run struct {
	prior      Prior
	likelihood LogLikelihood
	o          Options

	s       Sample
	from    mixture
	logPost []float64 // of each draw: likelihood times prior, but for a constant
	logFrom []float64 // of each draw: the mixture
}

// poor tells whether the draws so far do not suffice.
func (r *run) poor() bool { return r.s.EffectiveSize() < r.enough() || !r.s.Trusted() }

// enough is the effective sample size at which a run ends.
func (r *run) enough() float64 { return r.o.Share * float64(r.o.Draws) }

// draw adds draws from a distribution and weighs all that there are.
func (r *run) draw(from density, draws [][]float64) error {
	logs, err := r.likelihood(draws)
	if err != nil {
		return err
	}
	added := component{from, len(draws)}
	r.from = append(r.from, added)
	for i, x := range r.s.Draws {
		r.logFrom[i] = logSum(r.logFrom[i], added.logShare(x))
	}
	for i, x := range draws {
		r.logPost = append(r.logPost, logs[i]+r.prior.LogProb(x))
		r.logFrom = append(r.logFrom, r.from.logTotal(x))
	}
	r.s.Draws = append(r.s.Draws, draws...)
	weights := make([]float64, len(r.s.Draws))
	for i := range weights {
		weights[i] = r.logPost[i] - r.logFrom[i]
	}
	if r.s.Weights = normalise(weights); r.s.Weights == nil {
		return ErrNoLikelihood
	}
	return nil
}
