package grain

import (
	"maltwright/sim/powers"
)

// MoistFactor gives φ, the share of full speed at which kernels grow at the
// wet-basis moisture w and the growth clock, °C·h: nil up to a moisture, one
// from another, and the smooth step s²(3 − 2s) between. For kernels that have
// chitted those are the profile's DryStop and MoistFull; a kernel wakes on less
// water, so both stand WakeEarly lower at clock nil and rise to their place, as
// (1 − clock/C)², until half the kernels have chitted. Standing: calibrated
// ("growth stops under 30 %", common practice).
func (p *Profile) MoistFactor(w, clock float64) float64 {
	asleep := max(0, 1-clock/p.Chit)
	s := (w + p.WakeEarly*asleep*asleep - p.DryStop) / (p.MoistFull - p.DryStop)
	switch {
	case !(s > 0):
		return 0
	case s >= 1:
		return 1
	}
	return s * s * (3 - 2*s)
}

// WarmFactor gives the degrees by which the growth clock moves in an hour at
// the grain temperature t, °C: t − BaseT up to BestT, from there in a straight
// line to nil at CeilingT, and nil outside. Degree-days over a base, with a
// falling side, are the usual form for germination (handbook, from memory).
func (p *Profile) WarmFactor(t float64) float64 {
	switch {
	case !(t > p.BaseT) || t >= p.CeilingT:
		return 0
	case t <= p.BestT:
		return t - p.BaseT
	}
	return (p.BestT - p.BaseT) * (p.CeilingT - t) / (p.CeilingT - p.BestT)
}

// FinalGermination gives the share of sound kernels that germinates when kept at
// t, °C: the profile's table, straight lines between its points, and nil
// outside the table. For barley the points are those of [onofri-2018].
func (p *Profile) FinalGermination(t float64) float64 {
	g := &p.Germinates
	for i := 1; i < len(g); i++ {
		if t >= g[i-1].T && t <= g[i].T {
			return g[i-1].Share + (g[i].Share-g[i-1].Share)*(t-g[i-1].T)/(g[i].T-g[i-1].T)
		}
	}
	return 0
}

// warmthKept is FinalGermination against the best of the table: the share of
// the kernels a germination test counts that still germinate at t, °C.
func (p *Profile) warmthKept(t float64) float64 {
	best := 0.0
	for _, g := range p.Germinates {
		best = max(best, g.Share)
	}
	if best == 0 {
		return 0
	}
	return p.FinalGermination(t) / best
}

// ClockSpeed gives the speed of the lot's growth clock, °C (degree-hours an
// hour), where the clock stands at clock, °C·h, at the grain temperature t, °C,
// the wet-basis moisture w, and the share access, 0 to 1, of the air the kernels
// could use. Of a lot whose kernels have all drowned it stands.
func (l *Lot) ClockSpeed(clock, t, w, access float64) float64 {
	if l.Drowned >= 1 {
		return 0
	}
	return l.Profile.WarmFactor(t) * l.Profile.MoistFactor(w, clock) * access * l.GrowthFactor * l.lateGrowth(clock) * l.Forms.growth(clock, t)
}

// Due gives the share of germinable kernels whose chit is due by the clock, °C·h:
// Φ(ln(clock/C)/σ_c), Φ the normal integral.
func (p *Profile) Due(clock float64) float64 {
	if !(clock > 0) {
		return 0
	}
	return normal(powers.Log(clock/p.Chit) / p.ChitSpread)
}

// Chitting gives the share of all kernels that chit while the share due (see
// [Profile.Due]) goes from one value to another at the grain temperature t, °C:
// germination · alive · kept(t) · (to − from). A kernel whose hour comes while the bed is
// too warm for it does not chit later: this is what the final germination at a
// steady temperature means, and an approximation when the temperature changes.
func (l *Lot) Chitting(from, to, t float64) float64 {
	return l.Germination * (1 - l.Drowned) * l.Profile.warmthKept(t) * (to - from)
}
