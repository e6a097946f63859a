package forecast

import (
	"maps"
	"slices"

	"maltwright/lang/model"
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
	kept.f, kept.effort = r.f.copy(), nil
	r.f.green = &green{kept, stage}
}

// copy gives a forecast that can be written on without the other one changing.
func (f *Forecast) copy() *Forecast {
	c := *f
	c.Stages, c.Gates, c.Pieces = slices.Clip(f.Stages), slices.Clip(f.Gates), slices.Clip(f.Pieces)
	c.Assumed, c.Learnt = slices.Clip(f.Assumed), slices.Clip(f.Learnt)
	c.Trouble, c.Seen = slices.Clip(f.Trouble), slices.Clip(f.Seen)
	return &c
}

// Dried forecasts the same batch on kilns that dry otherwise, as the options Drying and
// Sorption say it. What comes before the first kiln is taken from this forecast, so that it
// costs a part of what [Run] does and gives the same. A batch that came to no kiln is as it
// was. It returns the errors of Run.
func (f *Forecast) Dried(drying *float64, sorption float64, m *work.Meter) (*Forecast, error) {
	if f.green == nil {
		return f, nil
	}
	r := f.green.run
	r.f, r.counts, r.effort = r.f.copy(), maps.Clone(r.counts), effortOf(m)
	r.o.Drying, r.o.Sorption = drying, sorption
	return r.from(f.green.stage)
}
