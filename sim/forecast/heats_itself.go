package forecast

import (
	"maltwright/lang/model"
	"maltwright/sim/air"
	"maltwright/sim/grain"
	"maltwright/sim/kiln"
)

// Wet malt on the kiln
//
// Malt lives on until it is dry or hot, and its breath makes some 2 kW for each tonne. A kiln that
// dries carries off fifty times as much, so that the model of the kiln leaves breath out. Where next
// to no air comes that is wrong: the malt warms itself, and sours. So what its breath would make is
// added up beside the kiln, at the temperature and the moisture that the forecast has, with the
// oxygen that comes, and what evaporates, and what the air would carry off malt a little warmer, is taken off it.

const (
	// aliveTo is the temperature up to which malt that is wet counts as alive, °C, and aliveFrom the
	// moisture from which on (common practice: green malt above 50 °C breathes no more; below a
	// quarter of moisture it hardly grows or sours).
	aliveTo, aliveFrom = 50.0, 0.25

	// heatsBy is by how much malt must warm itself to be told, K: some twelve hours of its breath, which a
	// kiln that comes slowly to its heat does not take.
	heatsBy = 15.0

	// heldWithin is how much warmer than the forecast malt may lie without being told, K: what air carries
	// off malt that is so much warmer is no part of what warms it (the bound is ours).
	heldWithin = 5.0

	// evaporating is what a kg of water takes with it, J (handbook: at 20 to 30 °C).
	evaporating = 2.44e6
	// oxygenOfAir is how much is in a m³ of air, kg: a fifth of it by volume, at 20 °C.
	oxygenOfAir = 0.279
)

// HeatsItself is malt that lies on the kiln wet, and of which the air carries off less than its own
// breath makes.
type HeatsItself struct {
	Met
	Time     float64 // s for which that was so
	Moisture float64 // wet basis, at the end of that
	Rise     float64 // K by which its breath would have warmed it as it began, in a day
}

// breath is what the breath of malt on the kiln makes that nothing carries off.
type breath struct {
	lot     *grain.Lot // never changed
	clock   float64    // °C·h
	dry     float64    // kg of dry matter
	water   float64    // kg that were driven off before
	heat    float64    // J that are left in the malt
	seconds float64    // for which it has been
	rate    float64    // K/s at first
	longest HeatsItself
}

// breathes makes the account of malt that comes onto the kiln alive.
func (r *run) breathes() breath {
	if r.malt != nil || r.p.Grain.Kilned() {
		return breath{}
	}
	lot := r.batch.Lot
	return breath{lot: &lot, clock: r.batch.Clock, dry: r.batch.Dry}
}

// watch adds up dt seconds of it.
func (b *breath) watch(v kiln.View, dt float64) {
	evaporated := v.Ledger.DrivenOff() - b.water
	b.water = v.Ledger.DrivenOff()
	if b.dry == 0 || v.WetBasis <= aliveFrom || v.MaltT >= aliveTo {
		b.over()
		return
	}
	burnt := b.dry * b.lot.RespirationSpeed(b.clock, v.MaltT, v.WetBasis, 1)
	made := min(burnt, v.Airflow*oxygenOfAir/grain.StarchO2) * grain.StarchHeat
	b.heat += (made-carries(v, v.Airflow))*dt - evaporating*max(0, evaporated)
	if b.heat <= 0 {
		b.over()
		return
	}
	capacity := b.dry * (grainHeat + air.WaterHeat*v.WetBasis/(1-v.WetBasis))
	if b.seconds == 0 {
		b.rate = made / capacity
	}
	b.seconds += dt
	if b.heat >= heatsBy*capacity && b.seconds > b.longest.Time {
		b.longest = HeatsItself{Time: b.seconds, Moisture: v.WetBasis, Rise: b.rate * 86400}
	}
}

// carries is what the air that passes would carry off malt that is heldWithin warmer than the forecast has
// it, W: air leaves wet malt as wet as before and warmer, and so with more vapour, even where it came
// on saturated, as onto an upper floor, and dries nothing.
func carries(v kiln.View, airflow float64) float64 {
	is, err := air.FromRH(v.MaltT, v.OffRH, v.Off.P)
	if err != nil || v.On.Volume() <= 0 {
		return 0
	}
	warmer, err := air.FromRH(v.MaltT+heldWithin, v.OffRH, v.Off.P)
	if err != nil {
		return 0
	}
	return airflow / v.On.Volume() * (warmer.Enthalpy() - is.Enthalpy())
}

// grainHeat is what dry grain takes, J/(kg K) (handbook).
const grainHeat = 1600.0

// over begins anew where the air carries off what is made.
func (b *breath) over() { b.heat, b.seconds, b.rate = 0, 0, 0 }

// heatsItself tells of malt that lay wet without air.
func (r *run) heatsItself(m *kilnModel, st *model.Kilning, began float64) {
	t := m.breath.longest
	if t.Time == 0 || m.beyond {
		return
	}
	t.Met = Met{Place: st.Place(), At: began}
	r.trouble(t)
	r.assume(KilnBreath{r.called()})
}
