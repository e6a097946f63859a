package founding

import (
	"fmt"
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

// cureAt is the temperature of the cure, °C; 0 for malt that is not cured.
func (p *plan) cureAt() float64 {
	m := p.profile.Malt
	if p.profile.CureMost < 65 {
		return 0 // dried cool, and not cured
	}
	switch m.Name {
	case "distilling":
		return 0
	case "pale":
		return min(82, p.profile.HottestCure())
	case "pilsner":
		return min(82, p.profile.HottestCure())
	case "munich":
		return min(100, p.profile.HottestCure())
	}
	return min((m.Cure.Low+m.Cure.High)/2, p.profile.HottestCure())
}

// hottest is the dryer in which malt is cured: the last of those that come nearest to the
// temperature of its cure, and how hot it gets, °C.
func (p *plan) hottest(cure float64) (in int, at float64) {
	for i, k := range p.kilns {
		if _, high := reach(k); min(high, cure) >= at {
			in, at = i, min(high, cure)
		}
	}
	return in, at
}

// possible makes another malt where nothing here is hot enough for the one that was asked for.
func (p *plan) possible() {
	cure := p.cureAt()
	_, at := p.hottest(cure)
	m := p.profile.Malt
	switch {
	case cure == 0 || at >= m.Cure.Low || m.Pale && at >= m.Least.Heat:
		return
	case at >= 70:
		p.malt = "pale"
	default:
		p.malt = "distilling"
	}
	p.instead = fmt.Sprintf("%s malt in the place of %s malt", p.malt, m.Name)
	p.need, p.have = m.Cure.Low, at
	p.profile = profileOf(p.profile.Name, p.malt)
}

// kilning shares the work out among the dryers: the first dries, each behind it goes on from
// there, and the hottest comes last and cures.
func (p *plan) kilning() {
	cure := p.cureAt()
	in, at := p.hottest(cure)
	if last := len(p.kilns) - 1; cure > 0 && in < last {
		p.kilns = append(slices.Clone(p.kilns[in+1:]), p.kilns[:in+1]...)
		p.turned = true
	}
	p.heats = nil
	for i, k := range p.kilns {
		h := heating{kiln: k}
		low, high := reach(k)
		last := i == len(p.kilns)-1
		switch {
		case i == 0:
			p.beginsIn(k)
			h.dry, h.gate = p.drying(k), 0.10
			if len(p.kilns) > 2 && len(h.dry) > 1 && !h.dry[0].broken {
				h.dry, h.gate = h.dry[:1], 0.25 // the next goes on with it
			}
		case !last && i == 1:
			h.dry, h.gate = p.drying(k), 0.10
			if n := len(h.dry); n > 1 {
				h.dry = h.dry[n-1:]
			}
		case !last:
			h.dry, h.gate = []drying{{from: within(60, low, high), to: within(60, low, high), until: 0.08, least: 1, most: 20}}, 0.08
		}
		switch {
		case !last:
		case cure > 0:
			h.cure = &curing{at: max(low, at), hours: 5, gate: max(p.profile.Malt.EndMost, p.profile.EndMost)}
			if deep(k) {
				h.cure.rise = 2
			}
		default:
			p.finished(&h, within(min(60, p.profile.CureMost), low, high))
		}
		p.heats = append(p.heats, h)
	}
}

// finished ends the drying of malt that is not cured.
func (p *plan) finished(h *heating, at float64) {
	h.gate = max(p.profile.EndMost, p.profile.Malt.EndMost) - 0.01
	if h.gate < 0.095 {
		h.dry = append(h.dry, drying{from: at, to: at, until: h.gate, least: 1, most: 20})
		return
	}
	if n := len(h.dry); n > 0 {
		h.dry[n-1].until = h.gate
	}
}

// beginsIn withers the malt first where the first dryer is too hot for wet malt, or too slow.
func (p *plan) beginsIn(k *model.Kiln) {
	low, _ := reach(k)
	if !still(k) && low < 45 {
		return
	}
	if p.spread == nil {
		return
	}
	mean, _ := p.room()
	at := math.Round(max(20, mean))
	p.wither = &withering{low: at, high: at + 4, to: 0.14, turn: 6, most: 72}
}

// drying is the way from green malt to 10 %.
func (p *plan) drying(k *model.Kiln) []drying {
	low, high := reach(k)
	t := func(at float64) float64 { return max(low, min(at, high, p.profile.CureMost-2)) }
	switch {
	case still(k):
		return []drying{{from: t(50), to: t(50), until: 0.10, least: 2, most: 24}}
	case deep(k):
		return []drying{{from: t(55), to: t(55), broken: true, least: 8, most: 30}, {from: t(65), to: t(65), until: 0.10, least: 0.5, most: 14}}
	case k.Draught.Text == vocabulary.DraughtNatural:
		return []drying{{from: t(45), to: t(45), until: 0.25, least: 3, most: 30}, {from: t(48), to: t(60), over: 8, until: 0.10, least: 0, most: 24}}
	case high < 75:
		return []drying{{from: t(40), to: t(40), until: 0.25, least: 4, most: 24}, {from: t(50), to: t(50), until: 0.10, least: 2, most: 24}}
	}
	return []drying{{from: t(48), to: t(48), until: 0.25, least: 4, most: 20}, {from: t(52), to: t(62), over: 4, until: 0.10, least: 0, most: 20}}
}
