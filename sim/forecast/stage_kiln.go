package forecast

import (
	"fmt"
	"math"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/air"
	"maltwright/sim/kiln"
	"maltwright/sim/quality"
)

// kiln dries and cures the malt.
func (r *run) kiln(st *model.Kilning) error {
	m, err := r.load(st)
	if err != nil {
		return err
	}
	var ticks []*tick
	if st.Stir != nil {
		ticks = append(ticks, &tick{every: st.Stir.SI, next: st.Stir.SI, place: st.Stir.Place, do: func(m physics) error {
			m.(*kilnModel).mix()
			return nil
		}})
	}
	began := r.clock
	for _, s := range st.Steps {
		if r.until.before(s, m) {
			return errEnough
		}
		err := r.kilnStep(m, st, s, ticks)
		r.leftIn(m, st, s.Place(), began)
		if err != nil {
			return err
		}
	}
	err = r.waitForFloor(m, st, began, ticks)
	r.leftIn(m, st, st.Place(), began)
	if err != nil {
		return err
	}
	r.gives(m, st)
	v := m.bed.View()
	r.kilned(m, st, began)
	r.unwalled(m, st.Kiln)
	r.heatsItself(m, st, began)
	r.malt = &finished{dry: m.forecast(r.batch.Dry), x: m.forecast(v.X), rootlets: m.forecast(r.batch.Rootlets())}
	r.batch.Water, r.t, r.heat = r.batch.Dry*v.X, v.MaltT, quality.Mean(m.quality)
	r.f.Totals.Quality = r.heat
	r.f.Totals.KilnWater += m.forecast(v.Ledger.DrivenOff())
	r.f.Totals.KilnEnergy += m.forecast(v.Ledger.Heater)
	r.spent(st, m.took(st.Kiln))
	return nil
}

var kilnTargets = map[string]kiln.Target{vocabulary.PlaceAirOn: kiln.AirOn, vocabulary.PlaceAirOff: kiln.AirOff, vocabulary.PlaceMalt: kiln.Malt, vocabulary.PlaceOven: kiln.Oven, "": kiln.AirOn}

// kilnStep runs one step on the kiln.
func (r *run) kilnStep(m *kilnModel, st *model.Kilning, s model.Step, ticks []*tick) error {
	if gate, ok := s.(*model.Gate); ok {
		before := *m.short
		err := r.gate(m, st, gate, ticks)
		r.gave(m, before, gate)
		return err
	}
	r.start(string(s.Kind()))
	as := r.asDone(s, r.now)
	out := Step{Kind: s.Kind(), Label: r.label(s), Place: s.Place()}
	s = r.otherwise(s)
	m.at, m.flow, m.share = 0, nil, m.shareOf(s)
	if flow := model.Airflow(s); flow != nil {
		m.flow = &flow.SI
	} else if s.Kind() == model.StewStep && m.still {
		m.flow = new(r.underCover(m, as))
	} else if m.flow = r.flaps(st.Kiln, m, as); m.flow != nil {
		defer r.flapsShut(m)
	}
	m.stewed = s.Kind() == model.StewStep
	m.worst.begin(len(m.quality))
	*m.short, m.warmest, m.lacks, m.floor.came = shortfall{}, coldest, wayShort{}, Temperature{}
	var err error
	if c, ok := s.(*model.Cool); ok {
		err = r.coolDown(m, st, c, as, out, ticks)
	} else {
		out.Temperature = m.ask(as, r.o.BandAt)
		before := m.bed.View().Ledger
		err = r.step(m, st, as, out, ticks)
		r.asItCame(m)
		r.airTrouble(m, as, before)
	}
	r.gave(m, shortfall{}, s)
	r.wayTrouble(m, st, s)
	r.kilnTroubles(m, st, as)
	return err
}

// label is the kind of a step of the kiln, with its number where the process has several: they
// are counted through all its kilns, as a record counts them.
func (r *run) label(s model.Step) string {
	count := 0
	for _, st := range model.Every[*model.Kilning](r.p) {
		for _, one := range st.Steps {
			if one.Kind() == s.Kind() {
				count++
			}
		}
	}
	if count < 2 {
		return string(s.Kind())
	}
	return fmt.Sprintf("%s %d", s.Kind(), r.now.number)
}

// ask sets the kiln to what a step asks for. A band is held at one place in it.
func (m *kilnModel) ask(s asked, at float64) Temperature {
	t := s.At
	if s.From != nil {
		t = s.From
	}
	if t == nil {
		m.target = kiln.AsComes
		return Temperature{}
	}
	m.target = kilnTargets[t.Where]
	low, high := bandOf(t.Range.Range)
	if s.From == nil {
		mid := within(t.Range.Range, at) - zeroC
		m.rise = rise{from: mid, to: mid}
		return Temperature{t.Where, low, high, true}
	}
	m.rise = rise{from: low, to: high}
	if s.Over != nil {
		m.rise.over = s.Over.SI
	}
	return Temperature{t.Where, low, high, true}
}

// coolLatest is how long malt cools at the most, s: no kiln takes longer (common practice).
const coolLatest = 12 * 3600.0

// cool blows room air through the malt until it is as cool as asked.
func (r *run) cool(m *kilnModel, st *model.Kilning, s asked, out Step, ticks []*tick) error {
	m.target = kiln.Fresh
	if m.still {
		r.assume(OpenOven{r.called()})
	}
	if m.cools != nil {
		r.assume(CoolDraught{Above: m.cools.Above + m.cools.Below, Called: r.called()})
	}
	latest := stop{latest: coolLatest, ending: ByGuard}
	if s.At != nil {
		out.Temperature = Temperature{s.At.Where, math.Round(m.bed.View().MaltT), s.At.High.SI - zeroC, true}
		latest.until = coolerThan(s)
		if m.beyond {
			out.Temperature.From = out.Temperature.To // what it cools from is not forecast
		}
	}
	if s.Allow != nil {
		g := stopOf(nil, nil, s.Allow)
		latest.earliest, latest.latest = g.earliest, min(g.latest, max(coolLatest, g.earliest))
	}
	if s.For != nil { // it was cooled so long, as the record of a batch says
		latest.until, latest.latest, latest.ending = nil, s.For.SI, ByTime
	}
	cannot := latest.until != nil && r.site.air > s.At.High.SI-zeroC
	if cannot {
		r.trouble(CannotCool{r.meets(s.place), s.At.Range.Range, r.site.air})
	}
	began := r.clock
	err := r.through(m, st, nil, latest, out, ticks)
	if latest.until != nil && !cannot && !m.beyond && err == nil {
		r.stillWarm(m, s, r.clock-began)
	}
	return err
}

// stillWarm tells of a cooling whose time was over before the malt was as cool as asked.
func (r *run) stillWarm(m *kilnModel, s asked, took float64) {
	test := coolerThan(s).Tests[0]
	if got, _, _ := m.measure(test.Measure); got > s.At.High.SI+shortBy && !r.endedByRecord() {
		r.trouble(StillWarm{Met: r.meets(s.place), Of: test.Measure, Asked: s.At.High, Got: got - zeroC, Malt: m.bed.Cooled(), Time: took})
	}
}

// endedByRecord tells whether a record says when the last step ended.
func (r *run) endedByRecord() bool {
	steps := r.f.Stages[len(r.f.Stages)-1].Steps
	return len(steps) > 0 && steps[len(steps)-1].EndedBy == ByRecord
}

// coolerThan is the condition that ends a cooling.
func coolerThan(s asked) *model.Condition {
	t := model.Test{Measure: vocabulary.MeasureMalt, Bound: &model.Bound{Bound: quantity.Bound{Op: quantity.AtMost, Range: s.At.Range.Range}, Place: s.At.Place}, Place: s.At.Place}
	if s.At.Where == vocabulary.PlaceAirOff {
		t.Measure = vocabulary.MeasureAirOff
	}
	return &model.Condition{Tests: []model.Test{t}, Place: s.At.Place}
}

// gave writes to the last step, if it is of the statement, what the kiln gave for most of it in place of what is
// asked; before is what it missed before that step.
func (r *run) gave(m *kilnModel, before shortfall, of model.Step) {
	st := &r.f.Stages[len(r.f.Stages)-1]
	if len(st.Steps) == 0 || m.beyond {
		return
	}
	last := &st.Steps[len(st.Steps)-1]
	if missed := m.short.seconds - before.seconds; last.Place == of.Place() && missed > (last.End-last.Start)/2 {
		last.Given = new((m.short.sum - before.sum) / missed)
	}
}

// kilnTroubles writes down what a step met.
func (r *run) kilnTroubles(m *kilnModel, st *model.Kilning, s asked) {
	if share, long := m.worst.long(); share >= hotShare {
		h := m.worst
		byAir := m.target != kiln.Oven && (m.target != kiln.Malt || !h.mean)
		r.trouble(HotWet{r.meets(s.place), h.t, h.w, h.limit, byAir, setTo(s), share, long})
	}
	if late, ok := r.late(m, st, s); ok {
		r.trouble(late)
	} else if sh := m.short; sh.seconds > shortFor || sh.limit == kiln.ByReachLow && sh.seconds > 0 {
		t := KilnShort{r.meets(s.place), m.target, sh.asked, sh.got, sh.limit, setTo(s), sh.seconds, false, r.byDoor(m)}
		if t.ByDrying() {
			t.Got = sh.sum / sh.seconds
		}
		if m.target == kiln.Malt || m.target == kiln.AirOff {
			t.Got = m.forecast(t.Got)
		}
		r.trouble(t)
	}
}

// byDoor tells whether a door that stands ajar lets out so much of what the heater gives that it is the cause.
func (r *run) byDoor(m *kilnModel) bool {
	on := m.bed.View().On
	outside, err := air.FromRH(r.site.air, r.site.rh, on.P)
	if err != nil || m.door == nil || m.power == 0 || m.flow != nil {
		return false
	}
	return m.short.limit == kiln.ByHeater && m.door.Draws(on, outside)*on.Density()*air.DryAirHeat*(on.T-outside.T) > doorShare*m.power
}

// doorShare is the part of the heater's power from which on a door is what lets it miss its temperature: a
// shut oven needs about half of it at most (common practice of household ovens, whose thermostats switch them off for half of the time).
const doorShare = 0.4

// shortFor is how long a kiln may miss its temperature untold: it takes a while to
// warm up, s. What it cannot go as low as it misses at once.
const shortFor = 3600.0
