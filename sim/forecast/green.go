package forecast

import (
	"maps"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/work"
)

// green is a forecast as it stood when its malt came to the first kiln.
type green struct {
	run   run
	stage int // the kiln's place among the stages
}

// keep keeps the run as it stands before its first stage on a kiln.
func (r *run) keep(stage int) {
	if !model.Is[*model.Kilning](r.p.Stages[stage]) || r.f.green != nil {
		return
	}
	kept := *r
	kept.f, kept.counts, kept.effort = r.f.copy(), maps.Clone(r.counts), nil // the run counts on
	r.f.green = &green{kept, stage}
}

// copy gives a forecast that can be written on without the other one changing.
func (f *Forecast) copy() *Forecast {
	c := *f
	c.Stages, c.Gates, c.Pieces = slices.Clip(f.Stages), slices.Clip(f.Gates), slices.Clip(f.Pieces)
	c.Left = slices.Clip(f.Left)
	c.Kilns, c.Spent = slices.Clip(f.Kilns), slices.Clip(f.Spent)
	c.Assumed, c.Learnt = slices.Clip(f.Assumed), slices.Clip(f.Learnt)
	c.Trouble, c.Seen = slices.Clip(f.Trouble), slices.Clip(f.Seen)
	c.Sprinkled = slices.Clip(f.Sprinkled)
	return &c
}

// Dried forecasts the same batch on kilns that dry otherwise, as the options Drying,
// DryingOf, LateDrying, LateColour and Sorption say it. What comes before the first kiln is taken from this forecast, so that it
// costs a part of what [Run] does and gives the same. A batch that came to no kiln is as it
// was. It returns the errors of Run.
func (f *Forecast) Dried(o Options, m *work.Meter) (*Forecast, error) {
	if f.green == nil {
		return f, nil
	}
	return f.onKiln(o, m).from(f.green.stage)
}

// onKiln takes the run up again where the malt comes to the kiln.
func (f *Forecast) onKiln(o Options, m *work.Meter) *run {
	r := f.green.run
	r.f, r.counts, r.effort = r.f.copy(), maps.Clone(r.counts), effortOf(m)
	r.o.Drying, r.o.DryingOf = o.Drying, o.DryingOf
	r.o.LateDrying, r.o.LateColour, r.o.Sorption = o.LateDrying, o.LateColour, o.Sorption
	return &r
}

// MoistureAt is the moisture, wet basis, with which a step on the kiln begins where kilns
// dry by another factor. It is false where the batch does not come to that step.
func (f *Forecast) MoistureAt(step source.Place, drying float64) (w float64, ok bool) {
	if f.green == nil {
		return 0, false
	}
	r := f.onKiln(Options{Drying: &drying}, nil)
	r.until = &reached{step: step}
	if _, err := r.from(f.green.stage); err != nil {
		return 0, false
	}
	return r.until.moisture, r.until.ok
}

// reached is a step before which a forecast breaks off, and the moisture that it then has.
type reached struct {
	step     source.Place
	moisture float64
	ok       bool
}

// before tells whether the forecast breaks off here.
func (u *reached) before(s model.Step, m physics) bool {
	if u != nil && s.Place() == u.step {
		u.moisture, u.ok = m.moisture(), true
	}
	return u != nil && u.ok
}
