package forecast

import (
	"fmt"
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/air"
	"maltwright/sim/draught"
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
	r.malt = &finished{dry: m.forecast(r.batch.Dry), x: m.forecast(v.X), rootlets: m.forecast(r.batch.Rootlets())}
	r.batch.Water, r.t, r.heat = r.batch.Dry*v.X, v.MaltT, quality.Mean(m.quality)
	r.f.Totals.Quality = r.heat
	r.f.Totals.KilnWater += m.forecast(v.Ledger.DrivenOff())
	r.f.Totals.KilnEnergy += m.forecast(v.Ledger.Heater)
	r.spent(st, m.took(st.Kiln))
	return nil
}

// Where the kiln says nothing.
const (
	usualLoad  = 15.0        // kg of green malt a square metre on trays (common practice: 3 to 5 cm)
	coolLatest = 12 * 3600.0 // s: no kiln cools longer
)

// load puts the batch on the kiln of the stage.
func (r *run) load(st *model.Kilning) (*kilnModel, error) {
	k := st.Kiln
	if k == nil {
		k = &model.Kiln{}
	}
	if r.malt == nil {
		r.loads = r.batch.Mass()
	}
	mass := r.loads // the air and the room of malt that was dried before are what its green malt had
	kit := kiln.Equipment{Still: k.Draught.Text == vocabulary.DraughtStill && !k.Tumbles}
	if !k.Tumbles {
		kit.Area = r.areaOf(k, mass)
		r.moves(&kit, st, k, mass)
	} else {
		kit = r.drum(kit, k, st)
	}
	if k.Heater != nil {
		kit.Heater = new(model.Given(k.Heater, k.Efficiency))
	} else if k.Fed() {
		kit.Heater = new(0.0)
	} else {
		r.assume(KilnHeater{r.called()})
	}
	if k.Efficiency == nil && vocabulary.Burns(k.Fired.Text) && (k.Heater != nil || !k.Fed()) {
		r.assume(FuelHeat{r.called()})
	}
	if k.Reaches != nil {
		low, high := bandOf(k.Reaches.Range)
		low, high = min(low, kiln.Hottest), min(high, kiln.Hottest) // what it reaches beyond limits no forecast
		kit.ReachLow, kit.ReachHigh = &low, &high
	}
	if k.Returns != nil && !kit.Still { // what a still oven cannot do was told
		kit.Recirculation = k.Returns.SI
	}
	kit.Recovers, kit.Over = r.recovers(st, k), r.bedsOver(st)
	kit.Walls, kit.Cools = r.wallsOf(k, kit), r.coolsBy(k, kit.Area)
	kit.Door = r.doorOf(st, k, kit)
	malt := r.batch.Lot.Dries(r.batch.Lot.Profile.Malt.With(new(r.drying(st.Kiln)), r.o.Sorption).Bound(r.o.LateDrying))
	depth, dried, settled := r.lies(r.batch.X())/kit.Area, r.lies(0)/kit.Area, r.batch.Lot.SwollenVolume()/kit.Area
	charge := kiln.Charge{DryMass: r.batch.Dry, Moisture: r.batch.X(), Temperature: r.t, Depth: &depth, Settled: &settled, DryDepth: &dried}
	ambient := kiln.Ambient{T: r.site.air, RH: r.site.rh, Altitude: r.site.altitude}
	loaded := &loading{charge: charge, kit: kit, ambient: ambient, malt: malt}
	if kit.Way != nil {
		loaded.by = driverOf(k)
	}
	if !kit.Still { // as of the species: a house's factor must not move the numerics
		list := draughts(st, kit)
		loaded.bounded(k, hottestOf(list))
		kit.Way = loaded.kit.Way
		r.tellAir(st, k, loaded, firstHeat(st))
		kit.Layers = kiln.LayersFor(charge, ambient, r.batch.Lot.Profile.Malt, loaded.throughGreen(list)...)
	}
	bed, err := kiln.New(charge, kit, ambient, malt)
	if err != nil {
		return nil, err
	}
	bed.Meter(r.effort.Meter)
	if err := r.feed(bed, st, k, kit.Still || k.Tumbles); err != nil {
		return nil, err
	}
	m := &kilnModel{bed: bed, meter: r.effort.Meter, still: kit.Still, vent: kit.Airflow, returns: kit.Recirculation, depth: depth, loaded: loaded, door: kit.Door, cools: kit.Cools, airs: Airs{Least: math.Inf(1)}, worst: &hotWet{}, short: &shortfall{},
		beyond: r.f.Beyond != nil, floor: onFloor{fed: k.Fed(), bare: r.bare}}
	if e := r.air[r.p.Giver(st)]; e != nil {
		m.floor.until = e.lasts
	}
	if kit.Heater != nil {
		m.power = *kit.Heater
	}
	if m.fan = moved(k) && k.FanPower == nil && kit.Way == nil && !k.Fed(); m.fan {
		r.assume(KilnFan{ductPressure, draught.Efficiency, r.called()})
	}
	if r.malt == nil && !r.p.Grain.Kilned() { // it comes to its first kiln
		r.heat = quality.Green(r.batch.Modification())
		r.heat.Faster = math.Log(orOne(r.o.LateColour))
	}
	m.quality = slices.Repeat([]quality.State{r.heat}, len(bed.Layers(nil)))
	m.worst.begin(len(m.quality))
	m.warmest = coldest
	return m, nil
}

// areaOf gives the kiln's area, or assumes one.
func (r *run) areaOf(k *model.Kiln, mass float64) float64 {
	if k.Area != nil {
		return k.Area.SI
	}
	r.assume(KilnArea{mass / usualLoad, usualLoad, r.called()})
	return mass / usualLoad
}

// airflowOf gives the kiln's air, or assumes some.
func (r *run) airflowOf(st *model.Kilning, k *model.Kiln, mass float64, still bool) float64 {
	if k.Airflow != nil {
		if most, to, ok := r.warmed(k); ok && k.Returns == nil && !k.Fed() && !still && k.Airflow.SI > weakBy*most {
			r.assume(KilnFresh{to, r.called()})
		}
		return k.Airflow.SI
	}
	if flow, ok := r.airOfFloor(st, mass); ok {
		return flow
	}
	if still {
		r.assume(OvenAir{kiln.StillVent, r.called()})
		return kiln.StillVent
	}
	air := KilnAir{Flow: mass * airPerKg, Each: airPerKg, Called: r.called()}
	if most, to, ok := r.warmed(k); ok && most < air.Flow {
		air.Flow, air.Each, air.Warmed = most, 0, &to
	}
	r.assume(air)
	return air.Flow
}

// airPerKg is the air of a small kiln, m³/s for each kg of green malt (common
// practice: 4000 to 5000 m³/h for a tonne of malt in a deep bed, and about twice
// that on trays).
const airPerKg = 8.0 / 3600

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
