package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/sim/grain"
)

// BedThen is where the middle of a bed was for as long as its air was not what was asked.
type BedThen struct {
	Time       float64 // s; 0 where it was never so
	Mean, Most float64 // °C, and the coldest or the warmest
	Later      float64 // s that its growth took longer for it; below nil, sooner
}

// adrift is a bed for as long as its air is too cold, or too warm.
type adrift struct {
	seconds, sum float64 // s, and °C·s of the middle of the bed
	most         float64 // °C, the coldest or the warmest
	cold         bool    // whether its air is too cold
	pace         paces
}

// paces are how far a bed grew, and how far it had grown where it should have been, °C·h.
type paces struct{ took, grown, would float64 }

// add notes dt seconds of a bed that is at t °C and should be at another.
func (p *paces) add(m *boxModel, dt, t, should float64) {
	p.took += dt
	p.grown += m.bed.Pace(t) * dt
	p.would += m.bed.Pace(should) * dt
}

// later is by how much longer the growth took, s; below nil, sooner.
func (p *paces) later() float64 {
	if p.would == 0 {
		return 0
	}
	return p.took * (1 - p.grown/p.would)
}

func (a *adrift) add(m *boxModel, dt, should float64) {
	t := m.core()
	a.seconds += dt
	a.sum += t * dt
	a.pace.add(m, dt, t, should)
	switch first := a.seconds == dt; {
	case first, t < a.most && a.cold, t > a.most && !a.cold:
		a.most = t
	}
}

func (a *adrift) then() BedThen {
	if a.seconds == 0 {
		return BedThen{}
	}
	return BedThen{a.seconds, a.sum / a.seconds, a.most, a.pace.later()}
}

// shorts notes air that does not come on as it is asked, with what the plant lacks before
// the bed runs away.
func (m *boxModel) shorts(dt float64) {
	d, b, on := &m.last, &m.blown, &m.blow[m.on]
	by := d.On.T - d.Asked
	if !on.asked || math.Abs(by) <= offBy || m.runs < soonReached {
		return
	}
	core, hold := m.core(), on.supply.Follow != nil
	should := core - by
	if hold && m.band.known {
		should = min(max(core, m.band.Low), m.band.High)
	}
	side := &m.warm
	if by < 0 {
		side = &m.cold
		side.cold = true
	}
	side.add(m, dt, should)
	if d.Short <= b.Short.Short {
		return
	}
	if b.Short.Short > 0 && m.runsAway(should, by) {
		b.Short.RunsAway = true
		return
	}
	b.Short = AirOnShort{Met: Met{Place: on.place, At: m.bed.Age()}, Asked: d.Asked, Got: d.On.T, Short: d.Short, ToHold: hold}
}

// runsAway tells whether a bed asks more of its plant the farther it strays: for the air
// that is to bring it back to where it should be, °C, or by the exhaust led back, where its
// air misses what is asked by so many K.
func (m *boxModel) runsAway(should, by float64) bool {
	s := &m.blow[m.on].supply
	return s.Follow != nil && math.Abs(m.core()-should) > fedBack || s.Return > 0 && math.Abs(by) > fedBack
}

// fedBack is how far off a bed, or its air, still asks what one in order does, K: so much
// warmer it breathes a quarter more (derived).
const fedBack = 3.0

// lostAbove is by how much a bed must be warmer than it grows best to be lost, K: 30 °C of
// barley (common practice). The warmer it is the more it breathes, and it ends where it dies.
const lostAbove = 5.0

// lostAt is the temperature above which the grain is lost, °C.
func (m *boxModel) lostAt() float64 { return lostAt(m.bed.Batch()) }

func lostAt(b grain.Batch) float64 { return b.Lot.Profile.BestT + lostAbove }

// soonLost is how long a part of a bed is so hot before it is told, s.
const soonLost = 2 * 3600.0

// fanKnown is how much more than the fan's own flow counts as the same: no fan is known
// better.
const fanKnown = 1.05

// notGiven tells of what the air of a bed did not do.
func (r *run) notGiven(m *boxModel, st model.Stage, b *Blown) {
	piece := model.PieceOf(st)
	for _, a := range piece.Blown {
		if a.Airflow != nil && a.Airflow.SI > fanKnown*piece.Floor.Airflow.SI {
			r.trouble(FanShort{r.meets(a.Airflow.Place), *a.Airflow, *piece.Floor.Airflow})
		}
	}
	if b.Short.Short > 0 {
		r.trouble(b.Short)
	}
	for _, missed := range b.Missed {
		if !b.Short.ToHold || b.Short.Place != missed.Place { // what the air lacks says where the bed was
			r.trouble(BandOff{r.meets(missed.Place), missed})
		}
	}
	if b.Hot > soonLost {
		r.trouble(RanHot{r.meets(st.Place()), m.lostAt(), b.Highest, b.Hot})
	}
}
