package follow

import (
	"cmp"
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"sync"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"
	"gonum.org/v1/gonum/stat/distuv"

	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/infer/sampler"
	"maltwright/sim/work"
)

// Options of a conditioning; the zero value is the usual one.
type Options struct {
	Members  int                   // 0 is DefaultMembers; LeastMembers to MostMembers
	Workers  int                   // 0 is one for each core
	Progress func(done, total int) // called now and then, from one goroutine at a time
	Shelf    Shelf                 // keeps what was found for the next time; nil for none. It changes no figure
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
	Tail          float64            // shape of the tail of their weights; see sampler.Sample.Tail
	Members       int                // how many were forecast and weighed
	Rounds        int                // of adaptation: how often more were drawn

	members []Member // those of the ensemble, with what they see
}

const seed1, seed2 = 0x666f6c6c, 0x6f776564

// Condition draws the ensemble of a trial from its posterior (sim/infer/sampler). Where most
// of its readings are settled (settled.go), members drawn from those are weighed by the rest.
// Otherwise the first members are drawn from the prior, and where too few of them agree with what was
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
	brief := !onKiln(usual, t.Now)
	before, known, err := fromSettled(ctx, t, o, brief)
	if err != nil {
		return nil, err
	}
	if known != nil && before.enough(known) {
		return before.resample(known)
	}
	c := conditioningOf(ctx, t, o)
	c.brief = brief
	s, err := c.drawnWhole()
	if err != nil {
		return nil, err
	}
	if known != nil && known.EffectiveSize() > s.EffectiveSize() && (known.Trusted() || !s.Trusted()) {
		return before.resample(known)
	}
	return c.resample(s)
}

// Trusted tells whether the members stand for what can be, as far as their weights say.
func (p *Posterior) Trusted() bool { return p.Tail <= sampler.Untrusted }

// onKiln tells whether a batch has come to the kiln by a time. From there on a forecast as
// far as the readings costs little less than the whole.
func onKiln(f *forecast.Forecast, now float64) bool {
	return slices.ContainsFunc(f.Stages, func(st forecast.Stage) bool {
		return st.Kind == model.KilnStage && len(st.Steps) > 0 && (now == 0 || st.Steps[0].Start < now)
	})
}

// conditioningOf begins a conditioning, with a pool of its own.
func conditioningOf(ctx context.Context, t *evidence.Trial, o Options) *conditioning {
	most := o.Members * work.Shared * 3 / 2 // some five draws of the usual cost twice over
	c := &conditioning{ctx: ctx, t: t, o: o, pool: work.NewPool(most), most: most, all: ensemble.Of(t.Process)}
	t.Bound(ctx, c.pool)
	return c
}

// drawn draws from the posterior of the trial.
func (c *conditioning) drawn() (*sampler.Sample, error) {
	return sampler.Run(prior(len(c.t.Axes)), c.logLikelihood, sampler.Options{
		Draws: c.o.Members, Source: rand.NewPCG(seed1, seed2), Start: c.mode, Afford: c.afford,
	})
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
	members []Member           // of each draw; none where it is brief
	logs    []float64          // logarithm of the likelihood of each draw
	settled *settled           // those that were weighed in the place of draws; nil where they were drawn
	brief   bool               // members are forecast as far as they are read, and not kept

	lock  sync.Mutex // of gates
	gates map[gate]*gate
}

// logLikelihood forecasts a member for each draw.
func (c *conditioning) logLikelihood(draws [][]float64) ([]float64, error) {
	members, logs := make([]Member, len(draws)), make([]float64, len(draws))
	report := c.reporting(len(c.logs), len(draws))
	err := ensemble.Each(c.ctx, c.o.Workers, len(draws), func(i int) error {
		f, err := c.t.Run(draws[i], c.brief)
		if err != nil {
			return err
		}
		if logs[i] = c.t.LogLikelihood(c.t.Residuals(f, draws[i])); !c.brief {
			members[i] = c.keep(f, draws[i])
		}
		report()
		return nil
	})
	if err := cmp.Or(err, c.pool.Err()); err != nil {
		return nil, err
	}
	if len(c.logs) == 0 {
		c.round = c.most - c.pool.Left()
	}
	c.members, c.logs = append(c.members, members...), append(c.logs, logs...)
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
func (c *conditioning) resample(s *sampler.Sample) (*Posterior, error) {
	p := &Posterior{Trial: c.t, Ensemble: c.all, Mean: s.Mean(), EffectiveSize: s.EffectiveSize(), Tail: s.Tail(), Members: len(s.Draws), Rounds: s.Rounds}
	for _, a := range c.t.Axes {
		p.Ensemble.Unknowns = append(p.Ensemble.Unknowns, a.Unknown)
	}
	if c.settled != nil {
		p.Members += c.settled.members
	}
	picked := s.Resample(c.o.Members)
	if c.brief {
		if err := c.see(s.Draws, picked); err != nil {
			return nil, err
		}
	}
	for _, i := range picked {
		p.Ensemble.Draws = append(p.Ensemble.Draws, places(s.Draws[i]))
		p.Ensemble.Members = append(p.Ensemble.Members, c.members[i].Member)
		p.members, p.Z = append(p.members, c.members[i]), append(p.Z, s.Draws[i])
	}
	return p, nil
}

// see forecasts the whole of those draws that were picked, which are in their order: what was
// weighed was a part of it.
func (c *conditioning) see(draws [][]float64, picked []int) error {
	unlike := slices.Compact(slices.Clone(picked))
	c.members = make([]Member, len(draws))
	report := c.reporting(len(c.logs), len(unlike))
	pool := work.NewPool(c.most)
	c.t.Bound(c.ctx, pool)
	err := ensemble.Each(c.ctx, c.o.Workers, len(unlike), func(i int) error {
		f, err := c.t.Run(draws[unlike[i]], false)
		if err != nil {
			return err
		}
		c.members[unlike[i]] = c.keep(f, draws[unlike[i]])
		report()
		return nil
	})
	return cmp.Or(err, pool.Err())
}

// places are where the axes lie in their distribution, 0 to 1.
func places(z []float64) []float64 {
	out := make([]float64, len(z))
	for i, v := range z {
		out[i] = distuv.UnitNormal.CDF(v)
	}
	return out
}
