package kiln

import (
	"math"

	"maltwright/sim/air"
)

// hunt is a search for the unknowns of a stage: where they stand, which of them are sought, between which bounds, and
// how much of each counts for as much as 1 of what is missing.
type hunt struct {
	at, low, high, scale list
	sought               [unknowns]bool
	stage                stage
	find                 *warmth // nil with air-on as it is asked
}

// setOut puts the unknowns where the stages before lead to. It is false where nothing is known of the flow.
func (b *Bed) setOut(h *hunt, on stream, turns bool) bool {
	guess := b.past.at(h.stage.at)
	if b.blows() && !b.setOutFlow(h, guess[ofFlow]) {
		return false
	}
	h.at[ofWater], h.at[ofWarmth] = on.w, on.t
	if h.sought[ofWater] = turns; turns {
		h.high[ofWater] = air.HumidityRatio(mostVapour*b.ambient.P, b.ambient.P)
		h.at[ofWater] = min(max(guess[ofWater], 0), h.high[ofWater])
	}
	if h.sought[ofWarmth] = h.find != nil; h.find != nil {
		h.low[ofWarmth], h.high[ofWarmth] = h.find.low, h.find.high
		h.at[ofWarmth] = min(max(guess[ofWarmth], h.find.low), h.find.high)
	}
	return true
}

// setOutFlow is setOut of the flow: a guess, or else what passed at last.
func (b *Bed) setOutFlow(h *hunt, guess float64) bool {
	h.low[ofFlow], h.high[ofFlow] = leastDraught*b.kit.Area, b.kit.most(b.set.airflow(b.kit), b.way())
	h.at[ofFlow] = h.high[ofFlow]
	if h.sought[ofFlow] = b.way().Drives(); !h.sought[ofFlow] {
		return true
	}
	if !(guess > 0) {
		guess = b.passing
	}
	if !(guess > 0) {
		return false
	}
	h.at[ofFlow] = min(max(guess, h.low[ofFlow]), h.high[ofFlow])
	h.scale[ofFlow] = perShare * h.at[ofFlow]
	return true
}

// onAt is air-on where the unknowns stand, with that flow.
func (b *Bed) onAt(h *hunt) stream {
	in := stream{t: h.at[ofWarmth], w: h.at[ofWater]}
	if b.blows() {
		b.passing = h.at[ofFlow]
		if h.find == nil && b.unheated() {
			in.t = b.blownFresh(h.at[ofFlow])
		}
	}
	return in
}

// passAt marches with that air-on.
func (b *Bed) passAt(h *hunt, in stream) flow {
	f := b.pass(in, h.stage.length, h.stage.slot)
	if f.settled && b.blows() && !f.apart {
		f.fan = f.g * b.fanWarmth(h.at[ofFlow], in)
	}
	return f
}

// missing is by how much each unknown is off, in its own unit.
func (b *Bed) missing(h *hunt, f flow) (miss list) {
	if h.sought[ofFlow] {
		miss[ofFlow] = b.excess(f, b.depthAt(b.stageX(h.stage.length)))
	}
	if h.sought[ofWater] {
		_, ratio := b.incoming(f)
		miss[ofWater] = h.at[ofWater] - ratio
	}
	if h.sought[ofWarmth] {
		miss[ofWarmth] = h.find.missing(f)
	}
	return miss
}

// judge tells which unknowns no bound keeps where they are, and whether all of those are found; it brings what
// is missing to the scale. It is not sound where that is no number.
func (h *hunt) judge(miss *list) (free [unknowns]bool, done, sound bool) {
	free, done = h.sought, true
	for i := range unknowns {
		if !h.sought[i] {
			continue
		}
		if math.IsNaN(miss[i]) || math.IsInf(miss[i], 0) {
			return free, false, false
		}
		if h.at[i] <= h.low[i] && miss[i] > 0 || h.at[i] >= h.high[i] && miss[i] < 0 { // a bound keeps it
			free[i] = false
			continue
		}
		if math.Abs(miss[i]) > (list{jointFlow * h.at[ofFlow], jointRatio, jointKelvin})[i] {
			done = false
		}
		miss[i] /= h.scale[i]
	}
	return free, done, true
}

// move takes a step within the bounds, and gives what of it was taken.
func (h *hunt) move(step list, free [unknowns]bool) list {
	for i := range unknowns {
		if !free[i] {
			continue
		}
		to := h.at[i] + step[i]*h.scale[i]
		if i == ofFlow {
			to = min(max(to, h.at[i]*(1-boldest)), h.at[i]/(1-boldest))
		}
		to = min(max(to, h.low[i]), h.high[i])
		step[i] = (to - h.at[i]) / h.scale[i]
		h.at[i] = to
	}
	return step
}
