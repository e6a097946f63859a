package grain

import "math"

// What kernels owe that had no oxygen. While it lacks, the share by which they
// grow and breathe less afterwards builds; in air they work it off. Fitted to
// wet barley that breathed 26 % less at once and came back within 28 h
// [davidson-jangaard-1978], where the hours without oxygen are not known: 6 of them
// are taken. A day of it leaves malt that is friable [bryce-2010], so that the debt has
// a bound.
const (
	// debtMost, share: what a long time without oxygen comes to; calibrated, see
	// above.
	debtMost = 0.5
	// debtBuilds, s of grain that wants what barley wants on its first day at
	// least: calibrated, see above.
	debtBuilds = 7.5 * 3600.0
	// debtPaid, s: the time constant with which air works it off; calibrated to
	// 26 % that are 2 % within 28 h.
	debtPaid = 10.5 * 3600.0
)

// DebtRate gives how fast the debt of kernels rises, 1/s, where they lack a share of
// the oxygen, 0 to 1, at the growth clock, °C·h, and the wet-basis moisture w:
//
//	d(debt)/dt = lack·awake·(0.5 − debt)/7.5 h − (1 − lack)·debt/10.5 h
//
// awake is φ times the rate of the table against that of its first day, 1 at the
// most: kernels that are dry or asleep want little and so owe little, as an early
// lack did little harm [wilhelmson-2006].
func (l *Lot) DebtRate(debt, clock, w, lack float64) float64 {
	rate := -(1 - lack) * debt / debtPaid
	if lack > 0 {
		p := &l.Profile
		awake := p.MoistFactor(w, clock)
		if first := p.Respiration[0]; first > 0 {
			awake *= math.Min(1, p.respirationTable(clock)/first)
		}
		rate += lack * awake * (debtMost - debt) / debtBuilds
	}
	return rate
}
