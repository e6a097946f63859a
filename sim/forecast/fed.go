package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
	"maltwright/sim/air"
	"maltwright/sim/kiln"
)

// Fed is the exhaust of another floor that a floor took.
type Fed struct {
	By               *model.Kilning // the stage whose exhaust it was
	Coolest, Warmest float64        // °C of it as it came, while that stage lasted
	Moistest         float64        // its highest humidity ratio, kg/kg
	Heat             float64        // J of it above outside air, its vapour left out, that went through the bed: what a heater would have had to give
	Took, Below      float64        // s that the steps of the two stages take
	Waited           float64        // s that the malt lay on here for the floor below to be free

	Rounds        int     // in which the exhaust was found
	Met           bool    // it was found
	Kelvin, Ratio float64 // K and kg/kg: how far, in the mean of the time, it is off what the stage below then gives; NaN for a batch under way
}

// onFloor is what a kiln model knows as one of several floors.
type onFloor struct {
	fed    bool        // it is given the exhaust of another
	until  float64     // s since it came on, when the floor below has no more air for it; 0 where none gives it any
	bare   bool        // only its own exhaust is asked for, and not what the heat does to the malt
	came   Temperature // the coolest and the warmest air of a step that takes it as it comes
	lasted float64     // s of the steps of a stage that takes the exhaust of another, and
	waited float64     // s that it waited for that behind them
}

// feed has a bed take the exhaust of the floor below, where that is known. A still oven has no
// draught to take it by, and a drum takes its air otherwise.
func (r *run) feed(bed *kiln.Bed, st *model.Kilning, k *model.Kiln, closed bool) error {
	if e := r.air[r.p.Giver(st)]; e != nil && !closed {
		if err := bed.Feed(e.course, k.BlowsBy() != source.Place{}); err != nil {
			return err
		}
	}
	if r.isGiver(st) || r.inTheWay(st) {
		bed.Trace()
	}
	return nil
}

// isGiver tells whether a stage gives its exhaust to another.
func (r *run) isGiver(st *model.Kilning) bool {
	for _, other := range model.Every[*model.Kilning](r.p) {
		if r.p.Giver(other) == st {
			return true
		}
	}
	return false
}

// leaks is the share of its air that still goes through a floor whose fan stands (numerical: next to nothing).
const leaks = 0.001

// gives notes the exhaust of a stage that gives it to another. Behind the stage its malt is taken
// off, and fire and fan rest.
func (r *run) gives(m *kilnModel, st *model.Kilning) {
	if r.tried && r.inTheWay(st) {
		r.above[st] = &exhaust{course: m.bed.Exhaust()}
	}
	if !r.isGiver(st) {
		return
	}
	e := &exhaust{course: m.bed.Exhaust()}
	if n := len(e.course); n > 0 {
		last := e.course[n-1]
		e.lasts = last.At
		if out, err := air.FromRH(r.site.air, r.site.rh, m.bed.View().On.P); err == nil {
			e.course = append(e.course, kiln.Incoming{At: last.At, T: out.T, W: out.W, Flow: leaks * most(e.course), Depth: last.Depth})
		}
	}
	if r.tried {
		r.air[st] = e
		return
	}
	r.apart(st, e)
}

// most is the largest flow of a course, kg/s.
func most(course kiln.Intake) (flow float64) {
	for _, c := range course {
		flow = max(flow, c.Flow)
	}
	return flow
}

// apart tells how far the exhaust that the stage above took is off what this one gives.
func (r *run) apart(st *model.Kilning, e *exhaust) {
	for i := range r.f.Kilns {
		fed := r.f.Kilns[i].Fed
		if fed == nil || fed.By != st {
			continue
		}
		now := *fed
		if r.o.Course == nil && r.air[st] != nil {
			now.Kelvin, now.Ratio = r.air[st].course.Apart(e.course, max(e.lasts, r.air[st].lasts))
		}
		now.Met = now.Met || now.Kelvin <= littleKelvin && now.Ratio <= littleRatio
		r.f.Kilns[i].Fed = &now
		if !now.Met && r.o.Course == nil {
			r.trouble(FloorsApart{Met{Place: r.f.Kilns[i].Place, At: r.f.Kilns[i].Began}, now.Rounds, now.Kelvin, now.Ratio})
		}
	}
}

// What the exhaust may be off in the mean where the search for it ended before its malt came
// out as it was supposed (numerical): it then tells no less.
const (
	littleKelvin = 0.3
	littleRatio  = 3e-4 // kg/kg
)

// waitForFloor lets the malt lie as it is until the floor below is free.
func (r *run) waitForFloor(m *kilnModel, st *model.Kilning, began float64, ticks []*tick) error {
	e := r.air[r.p.Giver(st)]
	if e == nil {
		return nil
	}
	m.floor.lasted = r.clock - began
	left := e.lasts - m.floor.lasted
	if left <= momentWidth {
		return nil
	}
	r.at = st.Place()
	r.start(string(model.GateStep))
	hot, _ := m.worst.long()
	*m.short, m.floor.came = shortfall{}, Temperature{}
	before, from, now := m.moisture(), r.clock, physics(m)
	_, ending, took, err := r.drive(&now, []stop{r.known(stop{latest: left, ending: ByTime, open: true}, r.now)}, ticks)
	m.set(now)
	r.record(Step{Kind: model.GateStep, Label: Waiting, Place: st.Place(), EndedBy: ending, Temperature: r.lastTemperature(st.Kind())}, m, before, took)
	m.floor.waited = r.clock - from
	r.asItCame(m)
	if h := m.worst; hot < hotShare { // else it was told of the step before
		if share, long := h.long(); share >= hotShare {
			r.trouble(HotWet{r.meets(st.Place()), h.t, h.w, h.limit, true, setTo(asked{}), share, long})
		}
	}
	return err
}

// fedBy tells of the exhaust that a stage took.
func (r *run) fedBy(m *kilnModel, st *model.Kilning, began float64) *Fed {
	by := r.p.Giver(st)
	e := r.air[by]
	if !e.blows() {
		return nil
	}
	s := r.f.fixed[st]
	f := &Fed{By: by, Rounds: s.rounds, Met: s.met, Heat: m.bed.Balance().Intake, Took: m.floor.lasted, Below: e.lasts, Waited: m.floor.waited, Coolest: math.Inf(1), Warmest: math.Inf(-1), Kelvin: math.NaN(), Ratio: math.NaN()}
	for _, c := range e.course {
		if c.At < e.lasts {
			f.Coolest, f.Warmest, f.Moistest = min(f.Coolest, c.T), max(f.Warmest, c.T), max(f.Moistest, c.W)
		}
	}
	r.assume(AirOfFloor{Floor: by.Kiln.Name, Coolest: f.Coolest, Warmest: f.Warmest, Cycle: f.Cycle(), Called: r.called()})
	return f
}

// note widens what is known of the air of a step that takes it as it comes.
func (m *kilnModel) note(t float64) {
	if !m.floor.came.Known {
		m.floor.came = Temperature{vocabulary.PlaceAirOn, t, t, true}
	}
	m.floor.came.From, m.floor.came.To = min(m.floor.came.From, t), max(m.floor.came.To, t)
}

// asItCame writes to the last step how warm the air was that it took as it came, to the degree.
func (r *run) asItCame(m *kilnModel) {
	st := &r.f.Stages[len(r.f.Stages)-1]
	if n := len(st.Steps); n > 0 && m.floor.came.Known {
		m.floor.came.From, m.floor.came.To = math.Round(m.floor.came.From), math.Round(m.floor.came.To)
		st.Steps[n-1].Temperature = m.floor.came
	}
}

// airOfFloor is the air of a floor without a fan of its own that takes the exhaust of another, by
// which its bed is laid out, m³/s: what the floor below has at air-on, or what is driven through both beds while its
// malt is green, in the first round of the search and in all that follow. It is false where nothing is known of that.
func (r *run) airOfFloor(st *model.Kilning, mass float64) (flow float64, ok bool) {
	by := r.p.Giver(st)
	switch {
	case by == nil:
		return 0, false
	case by.Kiln.Airflow != nil:
		return by.Kiln.Airflow.SI, true
	case r.cut[st] > 0:
		return r.cut[st], true
	case r.cut != nil && r.air[by].blows() && driverOf(by.Kiln) != "":
		e := r.air[by]
		r.cut[st] = e.course.At(e.lasts/4).Flow / dryAirDensity
		return r.cut[st], true
	}
	return mass * airPerKg, true
}

// dryAirDensity is that of the dry air in moist exhaust, kg/m³ (handbook, near 40 °C).
const dryAirDensity = 1.08

// Cycle is how long it is from one batch to the next at the least, s.
func (f *Fed) Cycle() float64 { return max(f.Took+f.Waited, f.Below) }
