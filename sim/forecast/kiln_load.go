package forecast

import (
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/draught"
	"maltwright/sim/kiln"
	"maltwright/sim/quality"
)

// usualLoad is what a kiln that says no area is taken to hold, kg of green malt for each square metre of trays (common
// practice: 3 to 5 cm).
const usualLoad = 15.0

// load puts the batch on the kiln of the stage.
func (r *run) load(st *model.Kilning) (*kilnModel, error) {
	k := st.Kiln
	if k == nil {
		k = &model.Kiln{}
	}
	if r.malt == nil {
		r.loads = r.batch.Mass()
	}
	kit := r.equipped(st, k)
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
	return r.modelOf(bed, st, k, kit, loaded), nil
}

// equipped is the kiln of a stage as its house says it, with what is assumed where that is silent; its layers are
// to be chosen yet.
func (r *run) equipped(st *model.Kilning, k *model.Kiln) kiln.Equipment {
	mass := r.loads // the air and the room of malt that was dried before are what its green malt had
	kit := kiln.Equipment{Still: Still(k) && !k.Tumbles}
	if !k.Tumbles {
		kit.Area = r.areaOf(k, mass)
		r.moves(&kit, st, k, mass)
	} else {
		kit = r.drum(kit, k, st)
	}
	kit.Heater = r.heaterOf(k)
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
	return kit
}

// heaterOf is what the heater of a kiln gives the air, W; nil for one that is strong enough.
func (r *run) heaterOf(k *model.Kiln) (power *float64) {
	switch {
	case k.Heater != nil:
		power = new(model.Given(k.Heater, k.Efficiency))
	case k.Fed():
		power = new(0.0)
	default:
		r.assume(KilnHeater{r.called()})
	}
	if k.Efficiency == nil && vocabulary.Burns(k.Fired.Text) && (k.Heater != nil || !k.Fed()) {
		r.assume(FuelHeat{r.called()})
	}
	return power
}

// modelOf is the model of malt as it comes onto a kiln.
func (r *run) modelOf(bed *kiln.Bed, st *model.Kilning, k *model.Kiln, kit kiln.Equipment, loaded *loading) *kilnModel {
	m := &kilnModel{
		bed: bed, meter: r.effort.Meter, still: kit.Still, vent: kit.Airflow, returns: kit.Recirculation, depth: *loaded.charge.Depth, loaded: loaded,
		door: kit.Door, cools: kit.Cools, airs: Airs{Least: math.Inf(1)}, worst: &hotWet{}, short: &shortfall{},
		beyond: r.f.Beyond != nil, floor: onFloor{fed: k.Fed(), bare: r.bare},
	}
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
	m.warmest, m.breath = coldest, r.breathes()
	return m
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
