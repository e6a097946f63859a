// Package pneumatic grows grain in a bed with air blown through it: the box, the
// drum, and the same bed while its fan stands.
//
// # How it works
//
// The bed is a pile of layers from air-on to air-off. Each has its own heat,
// water, burnt dry matter and growth. Air holds so little that at every moment
// it is marched through the layers as if nothing changed (march.go). In a layer
//
//	Ta′ = Ta + e·(T − Ta),  W′ = W + e·(Ws(T) − W),  e = 1 − exp(−NTU)
//
// A bed of one metre has some hundreds of transfer units, so that air leaves
// each layer saturated at the temperature of its grain. What the air takes up in
// heat and water is what the grain loses; where it is cooled, dew stays behind.
// So air below saturation dries the lowest layer and brings it to the wet bulb
// of the air-on, and the bed warms from there to the top by the heat of
// respiration over what the air can carry.
//
// While the fan stands (still.go) the layers pass heat to one another by
// conduction and lose it at both faces; vapour leaves by the upper one (upper.go),
// and oxygen comes in by it, beside what the pores held (oxygen.go). A bed that
// withers has that face open while the fan runs as well.
//
// Heat and water of the layers are one system of differential equations, stiff
// where the air is fast and the layers thin. They are stepped by a Rosenbrock
// method of second order (step.go), which stays stable at any length of step and
// whose own estimate of its error chooses the length. Each layer only depends on
// those before it, or, with the fan standing, on its neighbours, so that a step
// needs no iteration. Layers are moved by the very flows that the air is given:
// the balances of water, dry matter and heat close to rounding.
//
// The air-on is what the plant (plant.go) can make of room air and exhaust led
// back: its spray, its cooler and its heater. What it lacks is told, and never
// made up for in silence. A fan may run always, by the clock or by a thermostat
// (fan.go), and air-on or flow may follow the bed (follow.go).
//
// A turn evens all of the bed. Kernels of different growth then lie side by side;
// a layer goes on with the mean of their clocks, which leaves out that their
// growth has spread. Within some kelvin that is little: at 4 K from bottom to top
// their clocks part by 50 °C·h in half a day, of 2000 in all.
//
// [Bed] is a plain value. To find the hour of an event, copy it, advance the
// copy, and bisect.
//
// Left out: heat lost through the walls of the vessel and with turning; drops
// that the air carries into the bed; flow through cracks and along the walls;
// conduction between layers while air is blown, which carries a hundredth of
// what the air does; and the drift of warm air through a bed that stands.
package pneumatic
