package follow

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

// Member is what is kept of one forecast of a batch: thousands are weighed, and most
// are never asked for more than that.
type Member struct {
	ensemble.Member
	expected []float64 // of each observation
	now      *now      // nil where it did not come so far
	waits    []awaited
}

// now is what a member sees now.
type now struct{ moisture, weight, lost, chit, acrospire, modification, bed, airOff, malt float64 }

// awaited is a condition and when it came about, s from the first soak.
type awaited struct {
	gate *gate
	at   float64
}

// gate is a condition, the same for all members that wait for it.
type gate struct {
	stage model.StageKind
	of    model.Stage
	place source.Place
	text  string
	hold  bool
}

// keep takes from a forecast what the answer is made of.
func (c *conditioning) keep(f *forecast.Forecast, z []float64) Member {
	m := Member{Member: c.all.Reduce(f), expected: make([]float64, len(c.t.Observations))}
	for i := range c.t.Observations {
		m.expected[i] = c.t.Observations[i].Expect(f, c.t.Offset(z))
	}
	if c.t.Seen(f) && len(f.Seen) > 0 {
		s := f.Seen[len(f.Seen)-1]
		air := s.AirOff
		if forecast.InStillOven(s.Of) {
			air = s.AirOn
		}
		m.now = &now{s.Moisture, s.Weight, s.Lost, s.Chit, s.Acrospire, s.Modification, s.Bed, air, s.Malt}
	}
	for _, g := range f.Gates {
		if g.Ended >= c.t.Now-1 {
			m.waits = append(m.waits, awaited{c.gateOf(g), reached(g)})
		}
	}
	return m
}

// gateOf gives the condition of which a gate of a forecast tells.
func (c *conditioning) gateOf(g forecast.Gate) *gate {
	c.lock.Lock()
	defer c.lock.Unlock()
	k := gate{g.Stage, g.Of, g.Place, g.Text, g.Hold}
	if c.gates == nil {
		c.gates = map[gate]*gate{}
	}
	if c.gates[k] == nil {
		c.gates[k] = &k
	}
	return c.gates[k]
}

// spread is that of a value of the members, each of which counts the same.
func (p *Posterior) spread(of func(*Member) float64) ensemble.Spread {
	list := make([]float64, len(p.members))
	for i := range p.members {
		list[i] = of(&p.members[i])
	}
	return ensemble.SpreadOf(list)
}

// seen is the spread of what the members see now.
func (p *Posterior) seen(of func(*now) float64) ensemble.Spread {
	return p.spread(func(m *Member) float64 {
		if m.now == nil {
			return math.NaN()
		}
		return of(m.now)
	})
}
