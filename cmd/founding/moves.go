package founding

import (
	"slices"

	"maltwright/check/profile"
	"maltwright/lang/vocabulary"
)

// part is a part of a process that moves change.
type part int

const (
	ofCharge part = iota
	ofSteep
	ofGrowth
	ofBox
	ofWithering
	ofKiln
)

// move is one change of a plan. It is false where it changes nothing of it.
type move struct {
	of part
	do func(*plan) bool
}

// moves lists all that may be tried on a plan, one at a time.
func (p *plan) moves() (list []move) {
	add := func(of part, do func(*plan) bool) { list = append(list, move{of, do}) }
	for _, by := range []float64{1, 2, 3, 4} {
		add(ofSteep, func(p *plan) bool { p.longest -= by; return p.longest >= 4 })
	}
	for _, by := range []float64{-2, -1, 1, 2} {
		add(ofSteep, func(p *plan) bool {
			tap, _ := span(siteOf(p).Water, 9, 13)
			p.water += by
			return p.water >= tap && p.water <= p.profile.WarmWater
		})
	}
	p.movesOfGrowth(add)
	for _, to := range []float64{0, 0.41, 0.35, 0.30, 0.25, 0.20, 0.16, 0.14, 0.12} {
		add(ofWithering, func(p *plan) bool { return p.withered(to) })
	}
	for _, by := range []float64{-4, -2, 2, 4} {
		add(ofWithering, func(p *plan) bool {
			if p.wither == nil || p.wither.low+by < 15 || p.wither.high+by > 28 {
				return false
			}
			p.wither.low, p.wither.high = p.wither.low+by, p.wither.high+by
			return true
		})
	}
	add(ofWithering, func(p *plan) bool {
		if p.wither != nil {
			p.wither.most *= 1.5
		}
		return p.wither != nil && p.wither.most <= 120
	})
	for i := range p.heats {
		p.movesOfKiln(i, add)
	}
	for _, share := range []float64{0.85, 0.7, 0.5, 0.35, 0.25} {
		add(ofCharge, func(p *plan) bool { p.share *= share; return p.share > 0.08 })
	}
	return list
}

// withered sets to which moisture the malt withers; 0 for not at all.
func (p *plan) withered(to float64) bool {
	switch {
	case to == 0:
		had := p.wither != nil
		p.wither = nil
		return had
	case p.wither == nil:
		if p.spread == nil {
			return false
		}
		mean, _ := p.room()
		at := max(18, mean)
		p.wither = &withering{low: at, high: at + 4, to: to, turn: 6, most: 48}
		return true
	case p.wither.to == to:
		return false
	}
	p.wither.to = to
	return true
}

func (p *plan) movesOfGrowth(add func(part, func(*plan) bool)) {
	g := p.profile.Grows
	for _, band := range []profile.Band{{Low: g.Low, High: g.High}, {Low: g.Low + 1, High: g.High - 1}, {Low: g.Low, High: g.High - 2}, {Low: g.Low + 2, High: g.High}, {Low: g.Low, High: p.profile.GrowWarm() - 1}, {Low: g.Low + 2, High: p.profile.GrowWarm()}} {
		add(ofGrowth, func(p *plan) bool {
			changed := p.low != band.Low || p.bed != band.High
			p.low, p.bed = band.Low, band.High
			return changed && band.High > band.Low
		})
	}
	for turns := 2; turns <= 4; turns++ {
		add(ofGrowth, func(p *plan) bool {
			changed := p.turns != turns && p.box == nil
			p.turns = turns
			return changed
		})
	}
	for _, days := range []float64{1, 2, 3} {
		add(ofGrowth, func(p *plan) bool {
			p.days.High += days
			return p.days.High > p.days.Low && p.days.High+1 <= p.profile.MostDays
		})
	}
	add(ofGrowth, func(p *plan) bool { p.days.Low--; return p.days.Low >= 2 })
	if p.box == nil {
		return
	}
	for _, by := range []float64{-4, -3, -2, -1, 1, 2} {
		add(ofBox, func(p *plan) bool { p.box.air += by; return p.box.air >= p.profile.GrowsCold-2 })
	}
	for _, share := range []float64{1, 0.7, 0.5, 0.35, 0.25} {
		add(ofBox, func(p *plan) bool { changed := p.box.share != share; p.box.share = share; return changed })
	}
	add(ofBox, func(p *plan) bool { p.box.breathes = !p.box.breathes; return true })
	add(ofBox, func(p *plan) bool { p.box.held = !p.box.held; return true })
	add(ofBox, func(p *plan) bool { p.box.sprinkled = !p.box.sprinkled; return true })
}

func (p *plan) movesOfKiln(i int, add func(part, func(*plan) bool)) {
	low, high := reach(p.heats[i].kiln)
	for j, d := range p.heats[i].dry {
		for _, by := range []float64{-15, -10, -5, 5, 10} {
			if d.from+by < max(low, 30) || d.to+by > min(high, 80) {
				continue
			}
			add(ofKiln, func(p *plan) bool {
				p.heats[i].dry[j].from += by
				p.heats[i].dry[j].to += by
				return true
			})
		}
		for _, times := range []float64{0.5, 1.5, 2} {
			if d.over > 0 {
				add(ofKiln, func(p *plan) bool { p.heats[i].dry[j].over = float64(int(d.over * times)); return d.over*times >= 2 })
			} else {
				add(ofKiln, func(p *plan) bool { p.heats[i].dry[j].most = float64(int(d.most * times)); return d.most*times <= 72 })
			}
		}
		if d.broken {
			add(ofKiln, func(p *plan) bool { p.heats[i].dry[j].broken, p.heats[i].dry[j].until = false, 0.25; return true })
		}
		if d.least > 1 {
			add(ofKiln, func(p *plan) bool { p.heats[i].dry[j].least = 1; return true })
		}
	}
	for _, stir := range []float64{0, 2, 3, 4} {
		add(ofKiln, func(p *plan) bool { changed := p.heats[i].stir != stir; p.heats[i].stir = stir; return changed })
	}
	if p.heats[i].cure == nil {
		return
	}
	for _, hours := range []float64{3, 4, 6, 8, 10} {
		add(ofKiln, func(p *plan) bool { p.heats[i].cure.hours = hours; return true })
	}
	for _, by := range []float64{-5, -2, 2, 5, 10} {
		at := p.heats[i].cure.at + by
		if at > high || at < p.profile.Malt.Cure.Low || at > p.profile.HottestCure() {
			continue
		}
		add(ofKiln, func(p *plan) bool { p.heats[i].cure.at = at; return true })
	}
	for _, rise := range []float64{0, 2, 4} {
		add(ofKiln, func(p *plan) bool {
			changed := p.heats[i].cure.rise != rise
			p.heats[i].cure.rise = rise
			return changed
		})
	}
}

// partsOf are the parts in which a finding may be mended; nil for all of them.
var partsOf = map[string][]part{
	"target-not-reached": {ofSteep}, "target-overshot": {ofSteep}, "oxygen-gone": {ofSteep}, "steep-water-warm": {ofSteep}, "rest-too-cold-or-warm": {ofSteep},
	"bed-too-cold": {ofGrowth, ofBox, ofCharge}, "bed-too-warm": {ofGrowth, ofBox, ofCharge}, "room-too-cold-for-bed": {ofGrowth, ofCharge}, "room-too-warm-for-bed": {ofGrowth, ofCharge},
	"piece-overheats": {ofGrowth, ofBox, ofCharge}, "piece-too-deep": {ofCharge}, "turn-gap-long": {ofGrowth, ofCharge}, "box-cannot": {ofBox, ofGrowth, ofCharge}, "air-cannot-hold-bed": {ofBox, ofGrowth},
	"bed-uneven": {ofBox, ofCharge}, "bed-dries-out": {ofBox, ofGrowth}, "vessel-too-small": {ofCharge}, "out-of-proportion": {ofCharge}, "kiln-too-deep": {ofCharge},
	"fire-unattended": {ofWithering, ofKiln}, "withering-slow": {ofWithering, ofKiln, ofCharge},
}

// partsIn are the parts that bear on a stage.
var partsIn = map[string][]part{
	vocabulary.VerbSteep: {ofSteep, ofCharge}, vocabulary.VerbGerminate: {ofGrowth, ofBox, ofCharge}, vocabulary.VerbWither: {ofWithering, ofCharge},
	vocabulary.VerbKiln: {ofKiln, ofWithering, ofCharge},
}

// given are findings about what the lot and the house are, which no plan changes.
var given = []string{"treated-unknown", "germination-low", "ergot-check-missing", "co2-room", "gas-oven-indoors", "flue-not-said", "direct-fired", "grain-not-covered", "unusual-figure", "out-of-range", "germination-test-small"}

func isGiven(rule string) bool { return slices.Contains(given, rule) }
