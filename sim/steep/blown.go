package steep

import (
	"errors"
	"math"

	"maltwright/sim/air"
)

const (
	// airTransfer, per hour, of 1.5 l for each kg: the oxygen that air blown through brings in, for each
	// share of it that is missing. Calibrated to a reckoning, none of it measured in a steep:
	// 10 m³ of air for a tonne of grain and hour (common practice) carry 2.8 kg
	// of oxygen, a twentieth of that dissolves from coarse bubbles in one to three
	// metres of water (handbook, from memory), 140 g, and the 1.5 m³ of water at
	// 15 °C can miss 15 g.
	airTransfer = 10.0
	// onTime, s: the air is taken to be turned on and off so exactly; rounding then
	// never leaves a part of no length.
	onTime = 1e-6
)

// Blown is air blown through standing water at intervals: first when the water has stood
// for Every, and then for For of each Every.
type Blown struct {
	Every float64 // s, from one time to the next, 1 s to 30 days
	For   float64 // s, above nil and at most Every
}

// BroughtIn is the share of the oxygen missing in the water that air blown through for
// dt, s, brings into it where nothing breathes.
func (w Water) BroughtIn(dt float64) float64 { return -math.Expm1(-w.transfer() * dt) }

// transfer is airTransfer of the water drawn, per second: as much air brings as much oxygen
// into more water, which misses more.
func (w Water) transfer() float64 { return airTransfer / hour * DefaultWaterPerKg / w.perKg() }

func (b *Blown) check() error {
	if b == nil {
		return nil
	}
	return errors.Join(
		air.Within("time from air to air", b.Every, "s", 1, longestStep),
		air.Within("time of air", b.For, "s", math.SmallestNonzeroFloat64, b.Every))
}

// at tells whether the air is on in water that has stood for age, s, and how long that stays so, s.
func (b *Blown) at(age float64) (on bool, left float64) {
	since := math.Max(0, math.Mod(age+onTime, b.Every)-onTime) // the last time it was due
	if age+onTime >= b.Every && since+onTime < b.For {
		return true, math.Max(onTime, b.For-since)
	}
	return false, math.Max(onTime, b.Every-since)
}
