package forecast

import (
	"maltwright/lang/model"
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
	case k.Tumbles || k.AirFrom != nil || Still(k):
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
	kit.Way = r.wayOf(st, k, kit.Area)
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
func (r *run) wayOf(st *model.Kilning, k *model.Kiln, area float64) *draught.Way {
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
	over, floors, top := r.floorsOver(st)
	if by == ByDraught { // the house stands over its upper floor
		if w.Above += floors; top != nil {
			w.Above = floors + top.SI
		}
	}
	if by != ByFan {
		h := DraughtHeight{Above: w.Above, Below: w.Below, Chimney: k.Chimney != nil || by == ByDraught && top != nil, Over: over, Called: r.called()}
		if over != "" {
			h.Between = min(betweenFloors, w.Above)
		}
		r.assume(h)
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

// tellAir tells of the air that the kiln drives by itself, once its green malt is warm in air-on of t °C.
func (r *run) tellAir(st *model.Kilning, k *model.Kiln, l *loading, t float64) {
	if l.by == "" {
		return
	}
	flow := l.gives(t, l.kit.Airflow)
	over, _, _ := r.floorsOver(st)
	flue := 0.0
	if l.by == ByFan {
		flue = l.kit.Way.Above
	}
	a := DrivenAir{Flue: flue, Over: over, Flow: flow, By: l.by, At: t, Depth: *l.charge.Depth, Called: r.called()}
	if most, to, ok := r.warmed(k); ok && k.Airflow == nil && l.by != ByFan && flow >= kiln.FullAir*most {
		a.Warmed = &to
	}
	if l.kit.Way.Steady > 0 {
		a.Most = l.kit.Way.Steady
	}
	a.Draws = l.by == ByFan && l.kit.Way.Power == nil
	r.assume(a)
}

// hottestOf is the hottest air-on of draughts, °C.
func hottestOf(list []kiln.Draught) float64 {
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
