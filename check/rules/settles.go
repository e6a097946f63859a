package rules

import (
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

// A fault is softened only where what was assumed could cure it. Of air led back that can be tried: the
// process is forecast again with each share that kilns have, and where the rule raises the
// fault every time, nothing that could be written settles it.

// sharesLedBack are those that kilns lead back, in the order in which they are tried (common
// practice: half once the malt is hand-dry, up to nine tenths in the cure).
var sharesLedBack = []float64{0.5, 0.8, 0.9}

// couldCure tells whether a fault may be gone with another value of what was assumed. What cannot be tried,
// or no longer be paid for, may.
func (c *Case) couldCure(a forecast.Assumption, f finding.Finding) bool {
	if _, ok := a.(forecast.KilnFresh); !ok {
		return true
	}
	for _, share := range sharesLedBack {
		if tried := c.ledBack(share); tried == nil || !tried.raises(f) {
			return true
		}
	}
	return false
}

// raises tells whether the rule of a fault finds one at the same place.
func (c *Case) raises(f finding.Finding) bool {
	i := slices.IndexFunc(c.all, func(r Rule) bool { return r.Name == f.Rule })
	if i < 0 {
		return true
	}
	r := c.all[i]
	c.Found = nil
	r.Judge(r.Rule, c)
	return slices.ContainsFunc(c.Found, func(o finding.Finding) bool {
		return o.Rule == f.Rule && o.Place == f.Place && o.Severity == finding.Fault
	})
}

// ledBack is the case with so much of the air led back in each kiln of which that was assumed to be
// none; nil where it cannot be forecast.
func (c *Case) ledBack(share float64) *Case {
	if tried, ok := c.tried[share]; ok {
		return tried
	}
	if c.tried == nil {
		c.tried = map[float64]*Case{}
	}
	c.tried[share] = c.tryOut(c.leadingBack(share))
	return c.tried[share]
}

// tryOut is the case of another process; nil where it cannot be forecast.
func (c *Case) tryOut(p *model.Process) *Case {
	var o forecast.Options
	if c.Meter != nil {
		o.Meter = c.Meter()
	}
	f, err := forecast.Run(p, o)
	if err != nil || f.BrokenOff() {
		return nil
	}
	return &Case{Process: p, Profile: c.Profile, Claim: c.Claim, Forecast: f, On: c.On, Meter: c.Meter, all: c.all, trial: true}
}

// leadingBack is the process in such kilns.
func (c *Case) leadingBack(share float64) *model.Process {
	return c.inKilns(func(st *model.Kilning, k *model.Kiln) {
		if c.takenFresh(st) {
			k.Returns = &model.Quantity{Quantity: quantity.Quantity{SI: share, Dimension: quantity.Share}, Place: st.Kiln.Place}
		}
	})
}

// inKilns is the process in other kilns: each kiln of a stage is changed in a copy, once.
func (c *Case) inKilns(change func(st *model.Kilning, k *model.Kiln)) *model.Process {
	p, kilns := *c.Process, map[*model.Kiln]*model.Kiln{}
	p.Stages = slices.Clone(p.Stages)
	for i, st := range p.Stages {
		st, ok := st.(*model.Kilning)
		if !ok {
			continue
		}
		n := *st
		if st.Kiln != nil && kilns[st.Kiln] == nil {
			k := *st.Kiln
			kilns[st.Kiln] = &k
		}
		if n.Kiln = kilns[st.Kiln]; n.Kiln != nil {
			change(st, n.Kiln)
		}
		p.Stages[i] = &n
	}
	for was, n := range kilns {
		if from := kilns[was.AirFrom]; from != nil {
			n.AirFrom = from
		}
	}
	return &p
}

// takenFresh tells whether a stage was taken to lead no air back, since its kiln does not say.
func (c *Case) takenFresh(st *model.Kilning) bool {
	return st.Kiln != nil && slices.ContainsFunc(c.Forecast.Assumed, func(a forecast.Assumption) bool {
		fresh, ok := a.(forecast.KilnFresh)
		return ok && (fresh.Called == "" || fresh.Called == c.Process.Called(st))
	})
}
