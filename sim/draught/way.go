package draught

import (
	"errors"

	"maltwright/sim/air"
)

// gravity is that of standard, m/s² (published).
const gravity = 9.80665

// Way is what drives air through a kiln, and what beside the bed lies in its way.
type Way struct {
	Fan *Curve // nil for none

	// Above and Below are the heights, m, that draw: of air-off above the bed, and of
	// air-on below it.
	Above, Below float64

	// Steady is a pressure that is there whatever the air, Pa.
	Steady float64

	Opening float64 // the narrowest that the air goes through, m²; 0 where it counts for nothing

	// Power is what the fan draws, W; nil to reckon it from its flow and pressure. With it
	// and nothing else the Way drives whatever air is set.
	Power *float64
}

// Check returns a *[air.RangeError] for a height outside 0 to 200 m, a steady pressure outside 0
// to 1000 Pa, an opening outside 0 to 1 ha or a power outside 0 to 10 MW.
func (w *Way) Check() error {
	err := errors.Join(
		air.Within("height that draws", w.Above, "m", 0, 200),
		air.Within("height below the bed that draws", w.Below, "m", 0, 200),
		air.Within("steady draught", w.Steady, "Pa", 0, 1000),
		air.Within("opening of ducts and flaps", w.Opening, "m²", 0, 1e4))
	if w.Power != nil {
		err = errors.Join(err, air.Within("power of the fan", *w.Power, "W", 0, 1e7))
	}
	return err
}

// Drives tells whether it has a limit to the air that it drives, and not whatever is set.
func (w *Way) Drives() bool { return w.Fan != nil || w.Above > 0 || w.Below > 0 || w.Steady > 0 }

// heads are what ducts, floor and flaps lose at their narrowest, in velocity heads: an
// entry, a bend and an exit (handbook, from memory: 0.5, 1 and 1).
const heads = 2.5

// UsualOpening is the narrowest that the air of a kiln goes through, in ducts, floor and flaps,
// as a share of its area (common practice).
const UsualOpening = 1.0 / 20

// Natural is the pressure, Pa, with which warm air draws: g·(Above·(ρ(out) − ρ(off)) +
// Below·(ρ(out) − ρ(on))). It is below nil where that air is heavier than outside.
func (w *Way) Natural(out, on, off air.State) float64 {
	heavy := out.Density()
	return gravity * (w.Above*(heavy-off.Density()) + w.Below*(heavy-on.Density()))
}

// Column is by how much more it draws, Pa, where a height, m, is filled with one air in place of
// another: g·height·(ρ(before) − ρ(now)).
func Column(height float64, before, now air.State) float64 {
	return gravity * height * (before.Density() - now.Density())
}

// Ducts is what ducts, floor and flaps take, Pa, at a flow, m³/s, of air as it comes on:
// 2.5·ρ/2·(V/A)², A the Opening.
func (w *Way) Ducts(flow float64, on air.State) float64 {
	if w.Opening == 0 {
		return 0
	}
	speed := flow / w.Opening
	return heads * on.Density() / 2 * speed * speed
}

// Blown is what the fan gives, Pa, at a flow, m³/s, in the air that it blows: the pressure of
// its curve in proportion to the density.
func (w *Way) Blown(flow float64, in air.State) float64 {
	if w.Fan == nil {
		return 0
	}
	return w.Fan.Pressure(flow) * in.Density() / PlateDensity
}

// Efficiency of a fan, motor and all: pressure times flow over what it draws (common
// practice: 0.5 to 0.6).
const Efficiency = 0.5

// Power is what a fan draws, W, that gives a flow, m³/s, a pressure, Pa.
func Power(flow, pressure float64) float64 { return flow * pressure / Efficiency }
