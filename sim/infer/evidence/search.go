package evidence

import (
	"cmp"
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"maltwright/sim/ensemble"
)

const (
	stride   = 0.25  // of the finite differences, in standard deviations
	rounds   = 12    // of Gauss and Newton's method at the most
	halvings = 4     // of a step that makes it worse
	retries  = 2     // of the own part of a step that makes a trial worse
	goodCost = 0.01  // a step that gains less is the last
	promised = 0.005 // a step that promises less is not taken
	farthest = 3.0   // standard deviations to which an axis is followed
	near     = 0.3   // standard deviations within which slopes hold that were taken elsewhere
	far      = 1.0   // standard deviations beyond which they no longer lead the way
)

// search goes down to the mode of the posterior of some trials by Gauss and Newton's method.
// What costs is the forecasts. Slopes by finite differences take one for every axis of a
// trial, so they are taken where it begins and corrected from step to step by what the steps
// themselves show, as Broyden has it [broyden-1965]; they are taken anew only of a trial
// that has gone far, where they lead no farther or must be those of the mode.
type search struct {
	ctx     context.Context
	common  Common
	workers int
	exact   bool               // whether it ends with slopes that were taken near the mode
	tell    func(done, of int) // called after each forecast of a round; may be nil
	seats   []*seat
	mean    []float64 // of the shared axes
	cost    float64   // minus the logarithm of the posterior, but for a constant
}

// seat is a trial in a search.
type seat struct {
	trial     *Trial
	own       []float64 // its own part of each of its axes
	z         []float64 // its axes
	here      point     // there
	residuals []float64
	slopes    [][]float64 // of each residual by each axis; nil where they are not known
	taken     [][]float64 // the same as they were taken, and not corrected since
	from      []float64   // the axes at which they were taken
}

func searchOf(ctx context.Context, trials []*Trial, c Common, workers int) *search {
	s := &search{ctx: ctx, common: c, workers: workers}
	for _, p := range c.Prior {
		s.mean = append(s.mean, p.Mean)
	}
	for b, t := range trials {
		own := make([]float64, len(t.Axes))
		s.seats = append(s.seats, &seat{trial: t, own: own, z: c.place(b, s.mean, own)})
	}
	return s
}

// down goes to where the cost is least.
func (s *search) down() error {
	if err := s.begin(); err != nil {
		return err
	}
	for range rounds {
		n := s.normal(s.seats)
		gain, refused := 0.0, false
		if n.promise >= promised {
			var err error
			if gain, err = s.advance(n); err != nil {
				return err
			}
			refused = gain <= 0
		}
		if gain >= goodCost {
			if _, err := s.renew(far); err != nil {
				return err
			}
			continue
		}
		if !s.exact && !refused {
			return nil
		}
		if anew, err := s.renew(near); err != nil || !anew {
			return err
		}
	}
	if s.exact {
		_, err := s.renew(near)
		return err
	}
	return nil
}

// settle goes back to the slopes as they were taken, which tell how well the mode is known:
// what a step corrects leads on, but has in it what that one step showed by chance.
func (s *search) settle() {
	for _, x := range s.seats {
		x.slopes = x.taken
	}
}

// begin forecasts what is not yet, where the search stands, and takes the slopes there.
func (s *search) begin() error {
	if s.seats[0].here.forecast == nil {
		if err := s.found(s.seats); err != nil {
			return err
		}
		s.cost = s.costOf(s.mean, s.seats)
	}
	_, err := s.renew(math.Inf(1))
	return err
}

// costOf is minus the logarithm of the posterior, but for a constant.
func (s *search) costOf(mean []float64, seats []*seat) float64 {
	sum := 0.0
	for k, p := range s.common.Prior {
		off := (mean[k] - p.Mean) / p.SD
		sum += off * off / 2
	}
	for _, x := range seats {
		sum += x.cost()
	}
	return sum
}

// each makes forecasts at once, and tells how many of them are done.
func (s *search) each(n int, do func(i int) error) error {
	told := s.telling(n)
	err := ensemble.Each(s.ctx, s.workers, n, func(i int) error {
		defer told()
		return do(i)
	})
	return cmp.Or(err, s.dry())
}

// dry tells that the forecasts so far have used up the pool of a trial, whichever of
// them it was.
func (s *search) dry() error {
	for _, x := range s.seats {
		if err := x.trial.pool.Err(); err != nil {
			return err
		}
	}
	return nil
}

// advance goes the step of the normal equations, or a part of it, and gives what it gains:
// nothing where each part makes it worse. Where the shared axes go by a part of it, a trial
// that this makes worse goes by less of its own: whatever the others do, its cost is its own.
func (s *search) advance(n normal) (gain float64, err error) {
	part := 1.0
	for range halvings {
		mean, next := s.stepped(n, part, s.seats)
		if err := s.found(next); err != nil {
			return 0, err
		}
		if err := s.retried(n, mean, part, next); err != nil {
			return 0, err
		}
		if cost := s.costOf(mean, next); cost < s.cost {
			for b, x := range next {
				x.correct(s.seats[b])
			}
			gain, s.mean, s.seats, s.cost = s.cost-cost, mean, next, cost
			return gain, nil
		}
		part /= 2
	}
	return 0, nil
}

// found forecasts seats where they are.
func (s *search) found(seats []*seat) error {
	return s.each(len(seats), func(b int) (err error) {
		x := seats[b]
		x.here, err = x.trial.point(x.z)
		x.residuals = x.here.residuals
		return err
	})
}

// retried has the trials that a step makes worse go by less of their own part of it.
func (s *search) retried(n normal, mean []float64, part float64, next []*seat) error {
	for range retries {
		if part /= 2; len(mean) == 0 {
			return nil
		}
		var seats []*seat
		var which []int
		for b, x := range next {
			if x.cost() > s.seats[b].cost() {
				own := s.seats[b].moved(n.own[b], part)
				seats, which = append(seats, &seat{trial: x.trial, own: own, z: s.common.place(b, mean, own), slopes: x.slopes, taken: x.taken, from: x.from}), append(which, b)
			}
		}
		if err := s.found(seats); err != nil {
			return err
		}
		for i, x := range seats {
			if x.cost() < next[which[i]].cost() {
				next[which[i]] = x
			}
		}
	}
	return nil
}

// cost is what a trial has a part in of minus the logarithm of the posterior.
func (x *seat) cost() float64 { return -LogPrior(x.own) - x.trial.LogLikelihood(x.residuals) }

// moved is the own part of the axes after so much of a step.
func (x *seat) moved(step *mat.VecDense, part float64) []float64 {
	own := slices.Clone(x.own)
	for i := range own {
		own[i] = within(own[i]+part*step.AtVec(i), 0, 1)
	}
	return own
}

// stepped gives where a part of a step leads, with neither forecast nor residuals there.
func (s *search) stepped(n normal, part float64, seats []*seat) (mean []float64, next []*seat) {
	mean = slices.Clone(s.mean)
	for k, p := range s.common.Prior {
		mean[k] = within(mean[k]+part*n.mean.AtVec(k), p.Mean, p.SD)
	}
	for b, x := range seats {
		own := x.moved(n.own[b], part)
		next = append(next, &seat{trial: x.trial, own: own, z: s.common.place(b, mean, own), slopes: x.slopes, taken: x.taken, from: x.from})
	}
	return mean, next
}

// within keeps an axis in reach of what is usual, and of what was known of it.
func within(v, mean, sd float64) float64 {
	return min(max(v, min(-farthest, mean-farthest*sd)), max(farthest, mean+farthest*sd))
}
