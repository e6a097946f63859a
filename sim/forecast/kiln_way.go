package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/draught"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

// What draws in a kiln that says no chimney, m: warm air of the height of a small house over
// the bed, and of a heater or fire under it (common practice: a kiln's fire is a metre and more
// below its floor).
const houseAbove, houseBelow = 2.0, 1.0

// DrawsHard is the hardest that a natural draught pulls, Pa: a flue of 10 to 15 m, 60 to 80 K warmer than
// the air outside (common practice).
const DrawsHard = 25.0

// Driver is what drives the air of a kiln.
type Driver string

// The drivers.
const (
	ByFan     Driver = "fan"
	ByChimney Driver = "chimney"
	ByDraught Driver = "draught" // natural, and no chimney is said
)

// driverOf is what drives the air of a kiln, "" where its airflow is all that is known of it.
func driverOf(k *model.Kiln) Driver {
	natural := k.Draught.Text == vocabulary.DraughtNatural || k.Draught.Text == "" && k.FanPower == nil
	switch {
	case k.Tumbles || k.AirFrom != nil || k.Draught.Text == vocabulary.DraughtStill:
		return "" // nothing lies in its way, another kiln drives it, or nothing does
	case len(k.Fan) > 1:
		return ByFan
	case k.Chimney != nil && natural:
		return ByChimney
	case k.Draught.Text == vocabulary.DraughtNatural && k.Airflow == nil:
		return ByDraught
	}
	return ""
}

// moves gives the kiln its air, and what drives it.
func (r *run) moves(kit *kiln.Equipment, st *model.Kilning, k *model.Kiln, mass float64) {
	kit.Way = r.wayOf(k, kit.Area)
	switch {
	case kit.Way == nil:
		kit.Airflow = r.airflowOf(st, k, mass, kit.Still)
	case k.Airflow != nil:
		kit.Airflow = k.Airflow.SI
	case kit.Way.Fan == nil: // who minds its fire closes the flap until it is warm
		if most, _, ok := r.warmed(k); ok {
			kit.Airflow = most
		}
	}
}

// wayOf is what drives the air of a kiln on so many m², and what is in its way; nil where its
// airflow is all that is known of it. A natural draught of which only the air is said has that
// air, as long as one pulls so hard: see [loading.bounded].
func (r *run) wayOf(k *model.Kiln, area float64) *draught.Way {
	w := &draught.Way{Opening: draught.UsualOpening * area}
	by := driverOf(k)
	switch by {
	case ByFan:
		points := make([]draught.Point, len(k.Fan))
		for i, p := range k.Fan {
			points[i] = draught.Point{Flow: p.Flow.SI, Pressure: p.Pressure.SI}
		}
		curve, err := draught.NewCurve(points...)
		if err != nil {
			return nil
		}
		w.Fan = curve
		if k.FanPower != nil {
			w.Power = &k.FanPower.SI
		}
	case ByChimney:
		w.Below = houseBelow
	case ByDraught:
		w.Above, w.Below = houseAbove, houseBelow
	default:
		return nil
	}
	if k.Chimney != nil {
		w.Above = k.Chimney.SI
	}
	if by != ByFan {
		r.assume(DraughtHeight{Above: w.Above, Below: w.Below, Chimney: k.Chimney != nil, Called: r.called()})
	}
	return w
}

// loading is a charge as it came onto the kiln.
type loading struct {
	charge  kiln.Charge
	kit     kiln.Equipment
	ambient kiln.Ambient
	malt    drying.Material
	by      Driver // "" for an airflow that is there whatever the bed
}

// gives is the air, m³/s, that passes the green malt at an air-on of t °C, no more than most,
// 0 for no bound.
func (l *loading) gives(t, most float64) float64 {
	v, err := l.kit.Gives(l.charge, l.ambient, l.malt, t, most)
	if err != nil { // which the model tells of
		return l.kit.Airflow
	}
	return v
}

// bounded has a natural draught of which only the air is said pull no harder than any does.
func (l *loading) bounded(k *model.Kiln, t float64) {
	if l.by != "" || k.Draught.Text != vocabulary.DraughtNatural || k.AirFrom != nil || k.Tumbles {
		return
	}
	hard := *l
	hard.kit.Way = &draught.Way{Steady: DrawsHard, Opening: draught.UsualOpening * l.kit.Area}
	if hard.gives(t, l.kit.Airflow) < kiln.FullAir*l.kit.Airflow {
		*l = hard
		l.by = ByDraught
	}
}

// tellAir tells of the air that the kiln drives by itself.
func (r *run) tellAir(k *model.Kiln, l *loading, t float64) {
	if l.by == "" {
		return
	}
	flow := l.gives(t, l.kit.Airflow)
	a := DrivenAir{Flow: flow, By: l.by, At: t, Depth: *l.charge.Depth, Called: r.called()}
	if most, to, ok := r.warmed(k); ok && k.Airflow == nil && l.by != ByFan && flow >= kiln.FullAir*most {
		a.Warmed = &to
	}
	if l.kit.Way.Steady > 0 {
		a.Most = l.kit.Way.Steady
	}
	a.Draws = l.by == ByFan && l.kit.Way.Power == nil
	r.assume(a)
}

// driestAsked is the hottest air-on of the steps that dry, °C.
func driestAsked(list []kiln.Draught) float64 {
	t := 0.0
	for _, d := range list {
		t = max(t, d.T)
	}
	return t
}

// wayShort is by how much what drives the air misses what a step asks for.
type wayShort struct {
	seconds, air float64 // s, and m³ in them
	moved        kiln.Moved
}

// watchAir notes the air that comes.
func (m *kilnModel) watchAir(dt float64) {
	if m.loaded.by == "" {
		return
	}
	flow := m.bed.View().Airflow
	if m.target != kiln.Fresh {
		m.airs.Last = flow
		m.airs.Least = min(m.airs.Least, flow)
	}
	if m.onKiln += dt; m.onKiln <= airSettles || m.airs.First == 0 {
		m.airs.First = flow
	}
	set := m.vent
	if m.flow != nil {
		set = *m.flow
	}
	if set > 0 && flow < kiln.FullAir*set && m.target != kiln.Fresh {
		m.lacks.seconds += dt
		m.lacks.air += dt * flow
		m.lacks.moved = m.bed.Moved()
	}
}

// airSettles is how long the malt is on the kiln before the air at first is told: it is cold
// before, s.
const airSettles = 1800.0

// wayTrouble tells of a step that asked for more air than what drives it gives.
func (r *run) wayTrouble(m *kilnModel, st *model.Kilning, s model.Step) {
	l := m.lacks
	if l.seconds <= shortFor {
		return
	}
	asked := model.Airflow(s)
	if asked == nil && st.Kiln != nil {
		asked = st.Kiln.Airflow
	}
	if asked == nil {
		return
	}
	r.trouble(KilnAirShort{Met: r.meets(s.Place()), Asked: asked.Quantity, Got: l.air / l.seconds, Time: l.seconds,
		Gives: l.moved.Fan + l.moved.Natural, Takes: m.bed.Takes(asked.SI), By: m.loaded.by})
}

// Driven is why the air of a kiln does not dry its malt.
type Driven struct {
	By       Driver
	Depth    float64 // m
	Passes   float64 // m³/s, at air-on, the mean of the step
	Gives    float64 // Pa, that drives it
	Needs    float64 // m³/s, that would carry the water away in the time
	Takes    float64 // Pa, that those would be lost in
	Dries    float64 // s that it takes with the air that passes; infinite where none does
	Area     float64 // m² on which so much would pass; 0 where no area does
	Equipped quantity.Quantity
	Hardest  float64 // m³/s, that would pass under the hardest natural draught
}

// why is why so little air passed in a step in which so much dry air, kg, passed where so much
// was needed to carry the water away.
func (m *kilnModel) why(k *model.Kiln, took, passed, needed float64) *Driven {
	if k == nil || m.loaded.by == "" || took <= 0 {
		return nil
	}
	v, now := m.bed.View(), m.bed.Moved()
	if held := m.flow != nil || m.vent > 0; held && !now.Short {
		return nil // a hand lets no more through
	}
	perKg := v.On.Volume()
	d := &Driven{By: m.loaded.by, Depth: m.depth, Passes: passed * perKg / took, Gives: now.Fan + now.Natural, Needs: needed * perKg / took, Dries: math.Inf(1)}
	if k.Area != nil {
		d.Equipped = k.Area.Quantity
	}
	hard := *m.loaded
	hard.kit.Way, hard.kit.Airflow = &draught.Way{Steady: DrawsHard, Opening: m.loaded.kit.Way.Opening}, 0
	d.Hardest = hard.gives(v.On.T, 0)
	d.Takes = m.bed.Takes(d.Needs)
	if passed > 0 {
		d.Dries = took * needed / passed
	}
	d.Area = m.loaded.areaFor(d.Needs, v.On.T)
	return d
}

// mostSpread bounds how many times its area a charge is spread over in [loading.areaFor].
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
