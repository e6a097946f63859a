package evidence

import (
	"math"
	"slices"
)

// correct makes the slopes of where a step led: those of where it came from, with the
// least change by which they foretell what the step did.
func (x *seat) correct(before *seat) {
	step, square := make([]float64, len(x.z)), 0.0
	for i := range step {
		step[i] = x.z[i] - before.z[i]
		square += step[i] * step[i]
	}
	x.slopes = make([][]float64, len(before.slopes))
	for n, row := range before.slopes {
		x.slopes[n] = row
		if square < leastStep || before.residuals[n] == unhad || x.residuals[n] == unhad {
			continue
		}
		miss := x.residuals[n] - before.residuals[n]
		for i, d := range row {
			miss -= d * step[i]
		}
		x.slopes[n] = slices.Clone(row)
		for i := range row {
			x.slopes[n][i] += miss * step[i] / square
		}
	}
}

// leastStep is the square of a step from which on it tells of slopes: shorter ones tell
// of the kinks of the forecasts.
const leastStep = 0.2 * 0.2

// renew takes slopes anew, of the trials that have none or stand farther than so many
// standard deviations from where theirs were taken. It tells whether there were any.
func (s *search) renew(from float64) (bool, error) {
	type job struct{ trial, axis int }
	var jobs []job
	for b, x := range s.seats {
		if x.slopes == nil || distance(x.z, x.from) > from {
			for i := range x.z {
				jobs = append(jobs, job{b, i})
			}
		}
	}
	moved := make([][]float64, len(jobs))
	err := s.each(len(jobs), func(n int) error {
		x := s.seats[jobs[n].trial]
		p, err := x.trial.moved(x.here, x.z, jobs[n].axis)
		moved[n] = p.residuals
		return err
	})
	if err != nil {
		return false, err
	}
	for n, j := range jobs {
		s.seats[j.trial].slope(j.axis, moved[n])
	}
	return len(jobs) > 0, nil
}

func distance(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += (a[i] - b[i]) * (a[i] - b[i])
	}
	return math.Sqrt(sum)
}

// slope takes the slopes by one axis from the residuals a stride along it; nil where a
// forecast has nothing for the reading, which is a cliff and no slope.
func (x *seat) slope(axis int, moved []float64) {
	if axis == 0 {
		x.slopes, x.from = make([][]float64, len(x.residuals)), x.z
		x.taken = x.slopes
		for n := range x.slopes {
			x.slopes[n] = make([]float64, len(x.z))
		}
	}
	for n, r := range x.residuals {
		if r != unhad && moved[n] != unhad {
			x.slopes[n][axis] = (moved[n] - r) / stride
		}
	}
}
