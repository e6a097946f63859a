package kiln

import (
	"errors"
	"math"

	"maltwright/sim/air"
)

// Door is that of an oven, ajar.
type Door struct {
	Gap    float64 // m
	Height float64 // m
}

const (
	// OvenDoor is the usual height of the door of a household oven, m (common practice).
	OvenDoor = 0.4

	// orifice is the share of the ideal flow that a sharp-edged opening lets through
	// (common practice: 0.6).
	orifice = 0.6

	gravity = 9.81 // m/s²
)

func (d *Door) check(still bool) error {
	if d == nil {
		return nil
	}
	err := errors.Join(
		air.Within("gap of the door", d.Gap, "m", 1e-4, 1),
		air.Within("height of the door", d.Height, "m", 1e-2, 5),
	)
	if !still {
		return errors.Join(err, errors.New("a door stands ajar on a still oven alone"))
	}
	return err
}

// Draws gives the air that leaves an oven of the state inside through the gap, m³/s of that air, while
// as much of the state outside comes in: Cd/3·W·H^1.5·√(g·Δρ/ρ), with the neutral
// plane at half the height of the gap (published [brown-solvason-1962], from memory). W is the gap, H
// its height, Δρ how much denser the air outside is, and ρ the mean of both.
func (d *Door) Draws(inside, outside air.State) float64 {
	if d == nil {
		return 0
	}
	light, dense := inside.Density(), outside.Density()
	difference := math.Abs(dense-light) / ((dense + light) / 2)
	return orifice / 3 * d.Gap * math.Pow(d.Height, 1.5) * math.Sqrt(gravity*difference)
}

// draws is what the door lets out of the bed's oven; nothing where the setting says the airflow.
func (d *Door) draws(b *Bed, inside air.State) float64 {
	if d == nil || b.set.Airflow != nil {
		return 0
	}
	return d.Draws(inside, b.ambient)
}
