package evidence

import (
	"math"
	"slices"
)

// Guess is what is taken of the scatter about a shared axis before the trials tell, and for how
// many trials it counts.
type Guess struct{ SD, Trials float64 }

// scatterRounds are those in which the scatter is sought; it then moves by little.
const scatterRounds = 60

// FindScatter finds by how much the trials scatter about some of the shared axes, and fits them
// anew with that. It is the likeliest scatter where the axes themselves are integrated out, by
// expectation and maximisation [dempster-1977] along the straight lines of the fit: what each
// trial's own part of an axis most likely is, with its error, makes the scatter, and that the
// parts. The guess counts as so many trials more that scatter as it has it.
func (t *Together) FindScatter(guesses map[int]Guess) error {
	if len(guesses) == 0 {
		return nil
	}
	s := t.straight()
	for k, g := range guesses {
		s.scatter(k, g.SD)
	}
	for range scatterRounds {
		n := s.normal(s.seats)
		s.slide(s.stepped(n, 1, s.seats))
		for k, g := range guesses {
			s.scatter(k, s.scattered(n, k, g))
		}
	}
	t.search.common, t.search.mean = s.common, s.mean
	for b, x := range t.search.seats {
		x.own = s.seats[b].own
		x.z = s.common.place(b, s.mean, x.own)
		x.here = point{}
	}
	return t.fit()
}

// scattered is the scatter about a shared axis that the trials' own parts of it come to.
func (s *search) scattered(n normal, k int, g Guess) float64 {
	sum, count := g.Trials*g.SD*g.SD, g.Trials
	was := s.common.Scatter[k]
	for b, axes := range s.common.Axes {
		i := slices.Index(axes, k)
		if i < 0 {
			continue
		}
		own := s.seats[b].own[i]
		sum += was * was * (own*own + s.ownVariance(&n, b, i))
		count++
	}
	return math.Sqrt(sum / count)
}

// ownVariance is that of the error of a trial's own part of an axis, with the shared axes open.
func (s *search) ownVariance(n *normal, trial, axis int) float64 {
	p, axes := &n.parts[trial], s.common.Axes[trial]
	out, cov := inverse(&p.own).At(axis, axis), inverse(&n.shared)
	for i, k := range axes {
		for j, l := range axes {
			if k != Own && l != Own {
				out += p.give.At(axis, i) * cov.At(k, l) * p.give.At(axis, j)
			}
		}
	}
	return out
}

// scatter sets the scatter about a shared axis. The trials stay where they are.
func (s *search) scatter(k int, sd float64) {
	was := s.common.Scatter[k]
	s.common.Scatter[k] = sd
	for b, axes := range s.common.Axes {
		if i := slices.Index(axes, k); i >= 0 && was > 0 {
			x := *s.seats[b]
			x.own = slices.Clone(x.own)
			x.own[i] *= was / sd
			s.seats[b] = &x
		}
	}
}

// straight is the search with its trials as if every residual went in a straight line with
// every axis.
func (t *Together) straight() *search {
	s := &search{common: t.search.common, mean: slices.Clone(t.search.mean), seats: slices.Clone(t.search.seats)}
	s.common.Scatter = slices.Clone(t.search.common.Scatter)
	return s
}

// slide goes where a step leads, along straight lines.
func (s *search) slide(mean []float64, next []*seat) {
	for b, x := range next {
		before := s.seats[b]
		x.residuals = slices.Clone(before.residuals)
		for n, row := range x.slopes {
			if x.residuals[n] == unhad {
				continue
			}
			for i, d := range row {
				x.residuals[n] += d * (x.z[i] - before.z[i])
			}
		}
	}
	s.mean, s.seats = mean, next
}
