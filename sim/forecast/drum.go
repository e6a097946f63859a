package forecast

import (
	"cmp"
	"slices"

	"maltwright/lang/model"
	"maltwright/sim/kiln"
)

// drum puts the malt into a drum.
func (r *run) drum(kit kiln.Equipment, k *model.Kiln, st *model.Kilning) kiln.Equipment {
	mass := r.batch.Mass()
	in := kiln.Drum{Malt: r.lies(r.batch.X())}
	if in.Volume = in.Malt / kiln.FullDrum; k.Holds != nil { // the language asks every drum for it
		in.Volume = k.Holds.SI
	}
	if in.Share() > kiln.FullDrum*(1+fullBy) {
		place := st.Place()
		if k.Holds != nil {
			place = k.Holds.Place
		}
		r.trouble(DrumFull{r.meets(place), in.Malt, in.Volume, mass, mass * kiln.FullDrum / in.Share()})
	}
	kit = kit.In(in)
	switch {
	case k.Airflow != nil:
		kit.Airflow = k.Airflow.SI
	case len(k.Fan) > 0: // tumbled malt resists nothing: it gives what it gives at its least pressure
		kit.Airflow = slices.MaxFunc(k.Fan, func(a, b model.FanPoint) int { return cmp.Compare(a.Flow.SI, b.Flow.SI) }).Flow.SI
	default:
		kit.Airflow = kiln.DrumVent * mass
		r.assume(DrumAir{kit.Airflow, kiln.DrumVent, r.called()})
	}
	return kit
}

// fullBy is by what share a drum may be fuller than it should without a word: malt lies no more alike
// from one lot to the next (common practice).
const fullBy = 0.1

const (
	// quenchedWet, wet basis, is more than roasted malt holds when it comes from the drum (common
	// practice: up to 6 %).
	quenchedWet = 0.06

	// quenchedHot, °C: above it malt goes on to colour by itself, so that the water did not end
	// the roast (common practice).
	quenchedHot = 120.0
)

// coolDown cools the malt, with water first where it is said.
func (r *run) coolDown(m *kilnModel, st *model.Kilning, c *model.Cool, s asked, out Step, ticks []*tick) error {
	if c.Water == nil {
		return r.cool(m, st, s, out, ticks)
	}
	before := m.moisture()
	if err := r.quench(m, c); err != nil {
		return err
	}
	err := r.cool(m, st, s, out, ticks)
	steps := r.f.Stages[len(r.f.Stages)-1].Steps
	if n := len(steps); n > 0 && steps[n-1].Place == out.Place {
		steps[n-1].MoistureStart = before
	}
	return err
}

// quench pours water on the malt as its cooling begins.
func (r *run) quench(m *kilnModel, c *model.Cool) error {
	r.at = c.Water.Place
	water := 1000 * model.WaterVolume(c.Water.Quantity)
	enough := m.bed.Clone()
	q, err := m.bed.Quench(water, r.site.water)
	if err != nil {
		return err
	}
	out := Quenched{Met: r.meets(c.Water.Place), Water: *c.Water, Quenched: q, Beyond: m.beyond}
	if most, err := enough.Quench(plentyPoured*m.bed.View().Ledger.DryMass, r.site.water); err == nil {
		out.Enough = most.Steam
	}
	r.trouble(out)
	return nil
}

// plentyPoured is more water than any malt boils off, kg for each kg of its dry matter.
const plentyPoured = 0.5
