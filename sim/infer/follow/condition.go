package follow

import (
	"cmp"
	"context"
	"fmt"
	"math/rand/v2"
	"sync"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"

	"maltwright/sim/ensemble"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/infer/sampler"
	"maltwright/sim/work"
)

// Options of a conditioning; the zero value is the usual one.
type Options struct {
	Members  int                   // 0 is DefaultMembers; LeastMembers to MostMembers
	Workers  int                   // 0 is one for each core
	Progress func(done, total int) // called now and then, from one goroutine at a time
}

// DefaultMembers is how many forecasts a batch is followed by where nothing is said.
const (
	DefaultMembers = 200
	LeastMembers   = 20
	MostMembers    = 10_000
)

// Posterior is an ensemble that is conditioned on what was observed.
type Posterior struct {
	Trial         *evidence.Trial
	Ensemble      *ensemble.Ensemble // its members resampled by their weights, so that each counts the same
	Z             [][]float64        // of each of its members
	Mean          []float64          // of all axes
	EffectiveSize float64            // effective sample size of the weighted members
	Members       int                // how many were forecast and weighed
	Rounds        int                // of adaptation: how often more were drawn

	members []Member // those of the ensemble, with what they see
}

const seed1, seed2 = 0x666f6c6c, 0x6f776564

// Condition draws the ensemble of a trial from its posterior (sim/infer/sampler). The
// first members are drawn from the prior, and where too few of them agree with what was
// observed more are drawn about the mode, as long as it is worth it. It returns the error
// of the context when it is cancelled, that of a forecast that cannot begin, and
// work.ErrPool where the forecasts cost too much; where more of them would, no more are
// drawn.
func Condition(ctx context.Context, t *evidence.Trial, o Options) (*Posterior, error) {
	if o.Members == 0 {
		o.Members = DefaultMembers
	}
	if o.Members < LeastMembers || o.Members > MostMembers {
		return nil, fmt.Errorf("a batch followed by %d members: it takes %d to %d", o.Members, LeastMembers, MostMembers)
	}
	t.Bound(ctx, work.NewPool(work.Shared*3/2))
	usual, err := t.Run(make([]float64, len(t.Axes)), false)
	if err != nil { // where one is too dear, hundreds need not be tried
		return nil, err
	}
	t.Strike(usual)
	most := o.Members * work.Shared * 3 / 2 // some five draws of the usual cost twice over
	c := &conditioning{ctx: ctx, t: t, o: o, pool: work.NewPool(most), most: most, all: ensemble.Of(t.Process)}
	t.Bound(ctx, c.pool)
	s, err := sampler.Run(prior(len(t.Axes)), c.logLikelihood, sampler.Options{
		Draws: o.Members, Source: rand.NewPCG(seed1, seed2), Start: c.mode, Afford: c.afford,
	})
	if err != nil {
		return nil, err
	}
	return c.resample(s), nil
}

// prior is that of the axes: each is measured in standard deviations of what is usual.
func prior(axes int) *distmv.Normal {
	unit := mat.NewSymDense(axes, nil)
	for k := range axes {
		unit.SetSym(k, k, 1)
	}
	n, _ := distmv.NewNormal(make([]float64, axes), unit, nil) // a unit matrix is positive definite
	return n
}

// conditioning makes the forecasts that the sampler asks for, and keeps them.
type conditioning struct {
	ctx     context.Context
	t       *evidence.Trial
	o       Options
	pool    *work.Pool
	most    int                // what the pool held
	round   int                // what the forecasts of the first draws cost
	all     *ensemble.Ensemble // of which the members are
	members []Member           // of each draw

	lock  sync.Mutex // of gates
	gates map[gate]*gate
}

// logLikelihood forecasts a member for each draw.
func (c *conditioning) logLikelihood(draws [][]float64) ([]float64, error) {
	members, logs := make([]Member, len(draws)), make([]float64, len(draws))
	report := c.reporting(len(c.members), len(draws))
	err := ensemble.Each(c.ctx, c.o.Workers, len(draws), func(i int) error {
		f, err := c.t.Run(draws[i], false)
		if err != nil {
			return err
		}
		members[i], logs[i] = c.keep(f, draws[i])
		report()
		return nil
	})
	if err := cmp.Or(err, c.pool.Err()); err != nil {
		return nil, err
	}
	if len(c.members) == 0 {
		c.round = c.most - c.pool.Left()
	}
	c.members = append(c.members, members...)
	return logs, nil
}

// afford tells whether the pool bears another round. The fit before the first costs as
// much as the draws at the most.
func (c *conditioning) afford(rounds int) bool {
	need := c.round + c.round/2
	if rounds == 0 {
		need += c.round
	}
	return c.pool.Left() > need
}

// mode is where the axes most likely lie, and the covariance of their errors there.
func (c *conditioning) mode() ([]float64, mat.Symmetric, error) {
	e, err := evidence.Fit(c.ctx, c.t, c.o.Workers)
	return e.Z, e.Cov, err
}

// resample makes the ensemble of members that count the same.
func (c *conditioning) resample(s *sampler.Sample) *Posterior {
	p := &Posterior{Trial: c.t, Ensemble: c.all, Mean: s.Mean(), EffectiveSize: s.EffectiveSize(), Members: len(s.Draws), Rounds: s.Rounds}
	for _, i := range s.Resample(c.o.Members) {
		p.Ensemble.Members = append(p.Ensemble.Members, c.members[i].Member)
		p.members, p.Z = append(p.members, c.members[i]), append(p.Z, s.Draws[i])
	}
	return p
}
