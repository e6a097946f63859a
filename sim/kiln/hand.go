package kiln

import "maltwright/sim/air"

// Air-off answers late: what comes on now leaves only when its warmth has passed all of the bed, and
// while malt is wet it hardly answers at all. So a hand that holds it goes by two rules.
//
// On the way up it sets air-on above what is asked by offGain for each K that air-off lacks, up
// to Lead. Once air-off has been there it no longer does, for in a bed that answers an hour later that would
// swing from one bound to the other for ever. Then it only moves air-on by what has been missing: dI/dt = e/(2·L), e
// being what air-off lacks, at most handStep, and L the time in which warmth passes the bed, m·c/(g·c air):
// the integral law for what answers by a delay, at half of its usual speed. That a bed is still
// giving off the heat of its way up moves such a hand little. It begins anew where
// air-off falls far below what is asked.
//
// What a bound of air-on keeps it from is not added up.

const (
	// handStep is the most, K, that what is missing counts (calibrated: as above).
	handStep = 2.0

	// handLooks is how often a hand looks at air-off at the most, s (common practice).
	handLooks = 300.0
)

// hand is what holds air-off.
type hand struct {
	extra   float64 // on air-on, K, for what has been missing
	ref     float64 // where an implicit stage starts from
	rates   [stageCount]float64
	arrived bool // air-off has come to what is asked
}

// hold looks for the air-on by which air-off is held.
func (b *Bed) hold(low, high float64, s stage) flow {
	h, e, passage := &b.hand, 0.0, b.passage()
	var f flow
	t := root(low, high, b.now.on.t, 1+offGain, enoughKelvin, func(t float64) float64 {
		f = b.blow(t, low, high, s)
		e = s.asked - f.off.t
		return t - s.asked - h.ref - s.length/(2*passage)*counted(e) - h.hurry(e)
	})
	h.rates[s.slot] = counted(e) / (2 * passage)
	if e > 0 && (t >= high-enoughKelvin || b.limit.above()) || e < 0 && (t <= low+enoughKelvin || b.limit.below()) {
		h.rates[s.slot] = 0
	}
	return f
}

// above tells whether a limit keeps air-on from being warmer, and below whether from being cooler.
func (l Limit) above() bool { return l == ByHeater || l == ByReachHigh || l == ByFeed || l == ByLead }
func (l Limit) below() bool { return l == ByIncomingAir || l == ByReachLow || l == ByWalls }

// hurry is what a hand adds on the way up.
func (h *hand) hurry(e float64) float64 {
	if h.arrived {
		return 0
	}
	return offGain * max(0, e)
}

// counted is what is missing as far as it counts.
func counted(e float64) float64 { return max(-handStep, min(handStep, e)) }

// refer sets where the hand starts from in a stage.
func (h *hand) refer(dt float64, weights ...float64) {
	h.ref = h.extra
	for slot, weight := range weights {
		h.ref += dt * weight * h.rates[slot]
	}
}

// accept moves the hand to the end of a step, at which air-off lacks e K.
func (h *hand) accept(dt, e float64) {
	h.refer(dt, weights[:]...)
	h.extra = max(-Lead, min(Lead, h.ref))
	h.rates[0] = h.rates[stageCount-1]
	h.arrived = e <= 0 || h.arrived && e < Lead/offGain
}

// passage gives the time in which warmth passes the bed, s.
func (b *Bed) passage() float64 {
	x, _ := b.means()
	malt := b.dryMass() / b.kit.Area * (b.material.DryHeat() + air.WaterHeat*x)
	return max(handLooks, malt/(b.now.g*air.DryAirHeat))
}
