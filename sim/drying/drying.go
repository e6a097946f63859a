// Package drying gives how malt holds water and how fast a single layer of
// kernels gives it up: sorption, heat of vaporisation, specific heat, drying rate.
package drying

// How it works
//
// Moisture X is on the dry basis, kg of water per kg of dry matter, unless a
// name says wet basis; temperatures are those of the malt.
//
// A Material is anything that a kiln or a floor can dry. Malt is the one that
// there is: the figures of a Cereal, moved by what a house has learnt of its
// own malt. Barley is the only cereal whose figures are known.
//
// Sorption of a cereal is the modified Henderson equation, for barley with the
// coefficients of ASABE D245 [asabe-d245]. The standard's data lie between 20
// and 95 % relative humidity and at ordinary temperatures. Two departures are
// taken on purpose: the equation is used up to curing temperatures, because it
// stays positive and orderly there, where the Chung–Pfost form of the same
// standard turns negative; and above 95 % the surface counts as wet, since the
// equation then runs to saturation smoothly.
//
// Drying is first order in X − Xe with a constant that falls from its value
// for free water to its value for bound water, for barley as X goes from 0.201
// to 0.124, 17 to 11 % wet basis. One constant cannot serve both: what fits free
// water would dry malt to 2 % in a cure that leaves 4 % everywhere. Bound water
// has as far to go as half a kernel; how fast it does is fitted to thin layers by
// the command in sim/outside/fit.
//
// Heat is kept by an enthalpy, H(X, T), so that a kiln built on this package
// can close its energy balance exactly, whatever the material: specific heat
// and heat of vaporisation are both derivatives of it.
//
// The methods of a Material are for loops and take their arguments as they
// come. The functions of the same names check them first.
