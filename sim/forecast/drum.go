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
	if hot := hottestSet(st); k.Walls == nil && hot > r.site.air {
		r.assume(DrumShell{in.Shell(), hot, kiln.RoomFilm * in.Shell() * (hot - r.site.air), r.called()})
	}
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

// hottestSet is the hottest that a stage is set to, °C; far below anything where it sets nothing.
func hottestSet(st *model.Kilning) float64 {
	hot := -zeroC
	for _, s := range st.Steps {
		if s.Kind() != model.CoolStep {
			hot = max(hot, setHot(s))
		}
	}
	return hot
}

// fullBy is by what share a drum may be fuller than it should without a word: malt lies no more alike
// from one lot to the next (common practice).
const fullBy = 0.1

const (
	// quenchedWet, wet basis, is more than roasted malt holds when it comes from the drum (common
	// practice: up to 6 %).
	quenchedWet = 0.06

	// surelyWet is the same of malt where the model ends, whose heat is a coarse sum: what it gives and holds is
	// known to some 3 % of moisture (derived: 1.3 to 1.7 kJ/(kg K) at 210 °C).
	surelyWet = 0.09

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
	water, malt := 1000*model.WaterVolume(c.Water.Quantity), m.bed.View().Ledger.DryMass
	out := Quenched{Met: r.meets(c.Water.Place), Water: *c.Water, Beyond: m.beyond, Malt: malt}
	out.Before = m.bed.View().MaltT
	out.Enough = QuenchedBy(malt, out.Before)
	q, err := m.bed.Quench(water, r.site.water)
	if err != nil {
		return MuchWater{out.Water, malt, out.Before, out.Enough, err}
	}
	out.Quenched = q
	r.trouble(out)
	return nil
}

const (
	steamsAt    = 100.0  // °C, below which water makes malt wet
	hotMaltHeat = 1.7e3  // J/(kg K) of dry malt at the heat of a roast (handbook: 1.6 to 1.8 for dry cereals, from memory)
	steamHeat   = 2.61e6 // J/kg of water of 15 °C that leaves as steam (steam tables)
)

// QuenchedBy is the water, kg, that takes so many kg of malt from t °C to where it no longer
// steams, all of it leaving as steam: m·1.7·(t − 100)/2610; 0 for malt that is no hotter than that.
func QuenchedBy(malt, t float64) float64 {
	return max(0, malt*hotMaltHeat*(t-steamsAt)/steamHeat)
}

// MuchWater is more water on hot malt than a model takes.
type MuchWater struct {
	Water  model.Quantity // as written
	Malt   float64        // kg of its dry matter
	Before float64        // its temperature, °C
	Enough float64        // kg that would bring it to the boil
	Err    error
}

func (e MuchWater) Error() string { return e.Err.Error() }

// Unwrap is what the model says.
func (e MuchWater) Unwrap() error { return e.Err }
