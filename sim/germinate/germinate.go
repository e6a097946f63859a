// Package germinate grows the steeped grain on a floor, and withers it there.
//
// # How it works
//
// A [Piece] is a bed of grain of even depth between two faces. The kernels
// breathe, which makes heat, carbon dioxide and water; the heat goes by
// conduction to the faces and from there to the room, and with the water that
// evaporates. Between turns the middle grows warmer than the faces, and the
// open face drier than the middle; a turn evens both. Oxygen comes in by diffusion
// from the open face, and kernels that it does not reach neither grow nor breathe.
// Withering is the same bed in drier air: the growth slows and stops under 30 %.
//
// The bed is described by its mean temperature, by the excess of its middle
// over its face (the profile between is taken as a parabola, which is exact for
// even heating), by its mean moisture, and by the water its open face is short
// of. With growth, losses and heat these are one system of ordinary
// differential equations, carried forward with the classical Runge–Kutta method
// in steps well under the bed's own time constants.
//
// The heat content H, not the temperature, is the quantity integrated, counted
// from dry matter and liquid water at 0 °C:
//
//	dH/dt = respiration − loss to the room − vapour + held
//
// so the energy ledger closes to rounding. "Held" is the heat that is taken out
// or put in to keep the bed in a band: nil while the bed floats inside it, and at
// an edge just what keeps the bed there, as far as it can be had. Work on the bed
// takes heat out, a heap keeps it in, and beside them stand a cooler and a heater
// of so many watts; beyond all of that the bed goes by its own balance.
//
// [Piece] is a plain value. To find the hour of an event, copy it, advance the
// copy, and bisect.
package germinate
