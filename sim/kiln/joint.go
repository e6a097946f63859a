package kiln

import "math"

// What a kiln that drives its own air, leads some of it back, or is short of heat has to find in a
// stage hangs together: the flow of air, the water of air-on and, where it is not the one that is
// asked, its temperature. They are found at once, by Broyden's method [broyden-1965]: each march of air through
// the bed tells how far all of them are off, and what was learnt of how they answer one another is
// kept from stage to stage. The first march takes what the stages before it lead to, and is
// mostly the last but one. Where that does not come to an end soon, the searches of
// drive.go and fan.go find them one inside the other, each in a bracket.

// The unknowns of a stage, in the order in which they stand in a list of them.
const (
	ofFlow   = iota // m³/s at air-on
	ofWater         // of air-on, kg/kg
	ofWarmth        // of air-on, °C
	unknowns
)

type list = [unknowns]float64

const (
	// soon is how many marches are given to finding all of them at once (numerical).
	soon = 12

	// What may be left of each of them (numerical; all lie far below the tolerances of a step):
	// share of the flow, kg/kg and K.
	jointFlow, jointRatio, jointKelvin = 5e-5, enoughRatio, 2e-4

	// perRatio is how many kg/kg count for as much as a K, and perShare how much of the flow (numerical).
	perRatio, perShare = 1e-3, 0.02

	// boldest bounds by how much the flow changes from one march to the next, share of it (numerical).
	boldest = 0.7
)

// answers is how what is missing grows with each unknown, in units in which each counts alike.
type answers [unknowns][unknowns]float64

// aside is an answer of each to itself alone.
var aside = answers{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}

// joint is what a bed keeps of such searches.
type joint struct {
	learnt [2]answers // with air-on as it is asked, and with another
	known  [2]bool
}

// warmth is a search for air-on, °C, from low to high: missing, K, is nil there and rises with it.
type warmth struct {
	low, high float64
	missing   func(flow) float64
}

// joins tells whether a stage has so much to find that finding all at once pays.
func (b *Bed) joins() bool {
	return (b.blows() || b.walled()) && !b.kit.Still && !b.stillAir()
}

// blows tells whether the kiln drives the air by itself.
func (b *Bed) blows() bool { return b.way() != nil && !b.feed.fed() }

// jointly marches with the flow, the water and, with for given, the air-on that go together, on
// being air-on as it is known. It is not ok where they were not found.
func (b *Bed) jointly(on stream, s stage, turns bool, find *warmth) (f flow, ok bool) {
	h := hunt{stage: s, find: find, scale: list{1, perRatio, 1}}
	if !b.setOut(&h, on, turns) {
		return f, false
	}
	mode := 0
	if find != nil {
		mode = 1
	}
	a := aside
	if b.joint.known[mode] {
		a = b.joint.learnt[mode]
	}
	var miss, was, step list
	for try := range soon {
		in := b.onAt(&h)
		if f = b.passAt(&h, in); !f.settled { // a shorter step is taken
			return f, true
		}
		miss = b.missing(&h, f)
		free, done, sound := h.judge(&miss)
		if !sound {
			return f, false
		}
		if try > 0 {
			a.learn(step, was, miss, free)
		}
		if done {
			b.joint.learnt[mode], b.joint.known[mode] = a, true
			b.near = in
			return f, true
		}
		was = miss
		step = h.move(a.step(miss, free), free)
	}
	b.joint.known[mode] = false
	return f, false
}

// excess is by how much the flow exceeds that at which what drives it equals what it is lost in,
// m³/s, as far as the air at both faces of the bed stays: one step of Newton's method.
func (b *Bed) excess(f flow, depth float64) float64 {
	w, v := b.between(f.on, f.off, depth), b.passing
	gap := w.gap(v)
	return gap / (w.gap(v*(1+nudge)) - gap) * nudge * v
}

// nudge is the share of the flow by which it is changed to see how the pressures answer (numerical).
const nudge = 1e-4

// learn takes in what a step changed, so that the answers tell of it: Broyden's update.
func (a *answers) learn(step, was, miss list, free [unknowns]bool) {
	long := 0.0
	for i := range unknowns {
		long += step[i] * step[i]
	}
	if long == 0 {
		return
	}
	for i := range unknowns {
		if !free[i] {
			continue
		}
		off := miss[i] - was[i]
		for j := range unknowns {
			off -= a[i][j] * step[j]
		}
		for j := range unknowns {
			a[i][j] += off * step[j] / long
		}
	}
}

// step solves a·step = −miss for what is free, and is nil for what is not.
func (a *answers) step(miss list, free [unknowns]bool) list {
	m := *a
	for i := range unknowns {
		if miss[i] = -miss[i]; !free[i] {
			m[i], miss[i] = list{}, 0
			m[i][i] = 1
		}
	}
	for i := range unknowns {
		if math.Abs(m[i][i]) < leastAnswer {
			m[i][i] = math.Copysign(leastAnswer, m[i][i])
		}
		for k := i + 1; k < unknowns; k++ {
			share := m[k][i] / m[i][i]
			for j := i; j < unknowns; j++ {
				m[k][j] -= share * m[i][j]
			}
			miss[k] -= share * miss[i]
		}
	}
	for i := unknowns - 1; i >= 0; i-- {
		for j := i + 1; j < unknowns; j++ {
			miss[i] -= m[i][j] * miss[j]
		}
		miss[i] /= m[i][i]
	}
	return miss
}

// leastAnswer is the least that an unknown is taken to answer to itself (numerical).
const leastAnswer = 0.05
