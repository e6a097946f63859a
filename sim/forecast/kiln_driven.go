package forecast

import (
	"math"

	"maltwright/sim/draught"
)

// Driven is why the air of a kiln does not dry its malt.
type Driven struct {
	By      Driver
	Depth   float64 // m
	Passes  float64 // m³/s, at air-on, the mean of the step
	Gives   float64 // Pa, that drives it
	Needs   float64 // m³/s, that would carry the water away in the time
	Takes   float64 // Pa, that those would be lost in
	Dries   float64 // s that it takes with the air that passes; infinite where none does
	Area    float64 // m² on which so much would pass; 0 where no area does
	Hardest float64 // m³/s, that would pass under the hardest natural draught
	Over    string  // the kiln of the floor above where its bed holds more of the air back than this one does, with Depth its own; else ""
}

// why is why so little air passed in a step in which so much dry air, kg, passed where so much
// was needed to carry the water away; above is the kiln on the floor above.
func (m *kilnModel) why(above string, took, passed, needed float64) *Driven {
	if m.loaded.by == "" || took <= 0 {
		return nil
	}
	v, now := m.bed.View(), m.bed.Moved()
	if held := m.flow != nil || m.vent > 0; held && !now.Short {
		return nil // a hand lets no more through
	}
	perKg := v.On.Volume()
	d := &Driven{By: m.loaded.by, Depth: m.depth, Passes: passed * perKg / took, Gives: now.Fan + now.Natural, Needs: needed * perKg / took, Dries: math.Inf(1)}
	hard := *m.loaded
	hard.kit.Way, hard.kit.Airflow = &draught.Way{Steady: DrawsHard, Opening: m.loaded.kit.Way.Opening}, 0
	d.Hardest = hard.gives(v.On.T, 0)
	d.Takes = m.bed.Takes(d.Needs)
	if passed > 0 {
		d.Dries = took * needed / passed
	}
	if over := m.loaded.kit.Over; now.Over > now.Bed && len(over) > 0 && len(over[0].Course) > 0 {
		d.Over, d.Depth = above, over[0].Course.At(3600*v.Hours).Depth
		return d // more area here would do nothing
	}
	d.Area = m.loaded.areaFor(d.Needs, v.On.T)
	return d
}

// mostSpread bounds how many times its area a charge is spread over in [loading.areaFor] (numerical).
const mostSpread = 200.0

// areaFor is the area, m², on which the charge lets so much air through, m³/s; 0 where none does.
func (l *loading) areaFor(flow, t float64) float64 {
	on := func(times float64) float64 {
		s := *l
		way := *l.kit.Way
		way.Opening *= times
		s.kit.Way, s.kit.Area, s.kit.Airflow = &way, l.kit.Area*times, 0
		depth, settled, dry := *l.charge.Depth/times, *l.charge.Settled/times, *l.charge.DryDepth/times
		s.charge.Depth, s.charge.Settled, s.charge.DryDepth = &depth, &settled, &dry
		return s.gives(t, 0)
	}
	low, high := 1.0, mostSpread
	if on(high) < flow {
		return 0
	}
	for high/low > 1.01 {
		if mid := math.Sqrt(low * high); on(mid) < flow {
			low = mid
		} else {
			high = mid
		}
	}
	return l.kit.Area * high
}
