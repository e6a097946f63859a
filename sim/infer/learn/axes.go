package learn

import (
	"context"

	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/infer/evidence"
)

// Thermometer is the offset of the thermometer among the factors.
const Thermometer ensemble.Factor = "thermometer"

// key says what several batches have in common: a factor, and of which lot or kiln.
type key struct {
	which ensemble.Factor
	of    string
}

// column is one axis of the fit.
type column struct {
	key
	axis  evidence.Axis
	trial int // the only one that has it, where it is a trial's own
	seat  int // which of the axes of that trial it is, or of those that are shared
	grain *model.Grain
	kiln  *model.Kiln
	from  *model.Row // what older batches taught of it; nil for nothing
}

// shared tells whether the axis is of the house and not of one batch.
func (c column) shared() bool { return c.which != "" }

// fit is the trials with the axes that they share, and where these most likely lie.
type fit struct {
	*evidence.Together
	trials  []*evidence.Trial
	columns []column // the shared ones first
	common  evidence.Common
}

// arranged finds what trials have in common.
func arranged(trials []*evidence.Trial) *fit {
	f := &fit{trials: trials, common: evidence.Common{Axes: make([][]int, len(trials))}}
	known, own := map[key]int{}, []column{}
	for i, t := range trials {
		for n, a := range t.Axes {
			c := columnOf(t, a, i)
			if !c.shared() {
				c.seat = n
				own = append(own, c)
				f.common.Axes[i] = append(f.common.Axes[i], evidence.Own)
				continue
			}
			at, found := known[c.key]
			if !found {
				at = len(f.columns)
				c.seat, known[c.key] = at, at
				f.columns = append(f.columns, c)
				f.common.Prior, f.common.Scatter = append(f.common.Prior, evidence.Usual), append(f.common.Scatter, 0)
			}
			f.common.Axes[i] = append(f.common.Axes[i], at)
		}
	}
	f.columns = append(f.columns, own...)
	return f
}

func fitted(ctx context.Context, trials []*evidence.Trial, o Options) (*fit, error) {
	f := arranged(trials)
	f.goOn(o.From)
	var err error
	if f.Together, err = evidence.FitTogether(ctx, trials, f.common, o.Workers, o.telling(Fitting)); err != nil {
		return nil, err
	}
	return f, f.FindScatter(f.guesses())
}

// columnOf says what of the house an axis of a trial is, if it is anything of it.
func columnOf(t *evidence.Trial, a evidence.Axis, trial int) column {
	c := column{axis: a, trial: trial}
	switch p := t.Process; {
	case a.Thermometer:
		c.which = Thermometer
	case a.Factor.OfLot():
		if p.Grain != nil && p.Grain.Name != "" && len(p.Lots) == 0 { // a mixture is no lot
			c.grain, c.key = p.Grain, key{a.Factor, p.Grain.Name}
		}
	case a.Factor == ensemble.Drying:
		if k := a.Kiln; k != nil && k.Name != "" {
			c.kiln, c.key = k, key{a.Factor, k.Name}
		}
	default:
		c.which = a.Factor
	}
	return c
}

// pointOf gives the axes of a trial as the others teach them: what it shares with them lies
// where they have it, unless they do not tell it, and its own in the middle.
func (f *fit) pointOf(trial int) []float64 {
	mean, variance := f.Without(trial)
	z := make([]float64, len(f.common.Axes[trial]))
	for i, k := range f.common.Axes[trial] {
		if k != evidence.Own && 1-variance[k] >= leastExplained {
			z[i] = mean[k]
		}
	}
	return z
}
