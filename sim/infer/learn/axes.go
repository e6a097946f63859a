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
	grain *model.Grain
	kiln  *model.Kiln
}

// shared tells whether the axis is of the house and not of one batch.
func (c column) shared() bool { return c.which != "" }

// fit is the trials with the axes that they share, and where these most likely lie.
type fit struct {
	evidence.Estimate
	trials  []*evidence.Trial
	columns []column
	shared  evidence.Shared
}

func fitted(ctx context.Context, trials []*evidence.Trial, workers int) (*fit, error) {
	f := &fit{trials: trials, shared: make(evidence.Shared, len(trials))}
	known := map[key]int{}
	for i, t := range trials {
		for _, a := range t.Axes {
			c := columnOf(t, a, i)
			at, found := known[c.key]
			if !found || !c.shared() {
				at = len(f.columns)
				f.columns = append(f.columns, c)
				known[c.key] = at
			}
			f.shared[i] = append(f.shared[i], at)
		}
	}
	var err error
	f.Estimate, err = evidence.Fit(ctx, trials, f.shared, workers)
	return f, err
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
		if k := onlyKiln(p); k != nil {
			c.kiln, c.key = k, key{a.Factor, k.Name}
		}
	default:
		c.which = a.Factor
	}
	return c
}

// onlyKiln is the kiln of a process that has one. Where it has several, one axis
// serves them all, and what it comes to is of none of them.
func onlyKiln(p *model.Process) *model.Kiln {
	var only *model.Kiln
	for _, st := range p.Stages {
		k, ok := st.(*model.Kilning)
		if !ok {
			continue
		}
		if only != nil && only != k.Kiln || k.Kiln == nil || k.Kiln.Name == "" {
			return nil
		}
		only = k.Kiln
	}
	return only
}

// point gives the axes of a trial that was not fitted: what it shares with those that
// were lies where they have it, unless they do not tell it, and its own in the middle.
func (f *fit) point(t *evidence.Trial) []float64 {
	z := make([]float64, len(t.Axes))
	for i, a := range t.Axes {
		k := columnOf(t, a, 0).key
		for n, c := range f.columns {
			if c.shared() && c.key == k && f.varianceExplained(n) >= leastExplained {
				z[i] = f.Z[n]
			}
		}
	}
	return z
}
