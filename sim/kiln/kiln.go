// Package kiln forecasts malt on a kiln, a drying cabinet or a still oven: air
// is warmed, passes through or over the bed, takes up water and gives off heat.
package kiln

// How it works
//
// The bed is a pile of layers from air-on to air-off. Each holds a moisture X
// (dry basis) and an enthalpy H per kg of dry matter. The air is quasi-steady:
// it holds so little that at every moment it is marched through the layers as
// if nothing changed. In a layer
//
//   - air and kernel surface exchange heat and vapour, by the effectiveness
//     1 − exp(−NTU) with the transfer coefficient of Wakao and Kaguei, and
//     the same for both by Lewis' relation: thick layers bring the air into
//     balance with the surface, thin ones do not;
//   - water reaches the surface at the rate k·(X − Xs) of package drying, Xs
//     being the moisture that the surface holds against the vapour there.
//
// The two in series settle by themselves which of them limits: in a wet deep
// bed the air, so that malt sits near its wet bulb; in a thin or dry one the
// kernel. One unknown per layer remains, the flux of water, and one bracketed
// Newton solve finds it (layer.go, flux.go). How the state changes within a
// layer is allowed for to second order (profile.go), so that few layers do.
//
// Air may come from elsewhere, as the exhaust of another bed does, in a course by time (intake.go,
// exhaust.go); no step runs past a time at which it bends.
//
// Time is stepped by TR-BDF2 (step.go), a stiff second-order method with an
// estimate of its error, which is held by moistureTolerance and
// temperatureTolerance. Because later layers only depend on earlier ones, the
// implicit stage is solved layer by layer. Water and energy are advanced by
// the very fluxes that the air is given, so that the balances close to
// rounding whatever the step; Ledger shows it.
//
// What the heater can do, what the kiln reaches, exhaust led back, and control
// on malt or air-off are settled before each march (drive.go). Whatever keeps
// the kiln from its setting is told in View.Limit: nothing is adjusted in
// silence.
//
// A still oven is one layer in air that is well mixed: the same march with the
// weak exchange of natural convection, radiation from the walls, and nearly
// all of the air led back, so that only the vent flow leaves.
//
// The kiln's own walls, where something is said of them, hold heat and lose it (wall.go, walls.go);
// a door ajar lets air out of an oven by its warmth (door.go); and malt that nothing blows
// through cools in still air (cooling.go).
//
// Left out: walls of which nothing is said, so that a heater's power is what reaches the air;
// and channels in the bed.
