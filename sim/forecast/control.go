package forecast

import (
	"math"

	"maltwright/sim/pneumatic"
)

const (
	// controlTime, s: how often what controls the fan looks at the bed (common practice).
	controlTime = 300.0
	// mostLooks of the control are taken at once.
	mostLooks = 6
)

// goOn moves the bed on under the air that is on, to where another may come on, at most dt
// seconds, and gives the time that it took.
//
// A bed under one air goes one way, so that what each of several looks would have seen is
// known from the last: where no condition changes by then, none did before. Where one does,
// the bed goes back and takes fewer looks, until the one is found at which it changes.
func (m *boxModel) goOn(dt float64) (float64, error) {
	s := m.air()
	most := min(dt, m.untilClock())
	if !m.controlled() {
		return most, m.bed.Advance(most, s)
	}
	look := controlTime - math.Mod(m.bed.Age()+clockEdge, controlTime) + clockEdge
	for {
		n := max(1, m.looks)
		if m.within > 0 {
			n = max(1, m.within/2)
		}
		part := min(most, look+float64(n-1)*controlTime)
		if part <= look {
			m.within, m.looks = max(0, m.within-1), 2
			return part, m.bed.Advance(part, s)
		}
		before := m.bed
		if err := m.bed.Advance(part, s); err == nil && !m.changes() {
			m.within, m.looks = max(0, m.within-n), min(2*n, mostLooks)
			return part, nil
		}
		m.bed, m.within = before, n
	}
}

// air is what is blown now, or the room while the fan stands.
func (m *boxModel) air() pneumatic.Supply {
	if m.on < 0 {
		return m.still
	}
	s := m.blow[m.on].supply
	s.Fan.Power = m.fanPower(s.Flow)
	return s
}

// controlled tells whether anything looks at the bed.
func (m *boxModel) controlled() bool {
	for i := range m.blow {
		if m.blow[i].when != nil {
			return true
		}
	}
	return false
}

// changes tells whether a condition of an air holds otherwise than when one was last chosen.
func (m *boxModel) changes() bool {
	for i := range m.blow {
		b, so := &m.blow[i], m.latched&(uint64(1)<<i) != 0
		if b.when != nil && (i >= 64 || holdsOn(timed(m, m.bed.Age()), b.when, so) != so) {
			return true
		}
	}
	return false
}
