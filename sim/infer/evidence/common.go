package evidence

// Own is an axis that a trial has for itself.
const Own = -1

// Common says what several trials have in common: a lot, a kiln, a house. An axis of a trial
// that is its own is measured in standard deviations of what is usual, as every axis is; one
// that is shared lies at the common one, or scatters about it from trial to trial.
type Common struct {
	Axes    [][]int    // of each trial: which of the shared each of its axes is, or Own
	Prior   []Gaussian // of each of the shared, in the same standard deviations
	Scatter []float64  // of each of the shared: the standard deviation of the trials about it; 0 for none
}

// Gaussian is a normal distribution.
type Gaussian struct{ Mean, SD float64 }

// Usual is the prior of what nothing is known of yet.
var Usual = Gaussian{0, 1}

// Alone is that of a single trial.
func Alone(t *Trial) Common {
	axes := make([]int, len(t.Axes))
	for i := range axes {
		axes[i] = Own
	}
	return Common{Axes: [][]int{axes}}
}

// scale is by how much an axis of a trial moves with its own part of it: wholly where the
// axis is its own, and by the scatter where it is shared.
func (c Common) scale(k int) float64 {
	if k == Own {
		return 1
	}
	return c.Scatter[k]
}

// place gives the axes of a trial from the shared ones and its own part of each.
func (c Common) place(trial int, mean, own []float64) []float64 {
	z := make([]float64, len(own))
	for i, k := range c.Axes[trial] {
		z[i] = c.scale(k) * own[i]
		if k != Own {
			z[i] += mean[k]
		}
	}
	return z
}
