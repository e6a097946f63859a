// Package air gives the properties of moist air: saturation, humidity ratio,
// relative humidity, dew point, wet bulb, enthalpy and volume.
package air

// How it works
//
// The air is an ideal mixture of dry air and water vapour, as in chapter 1 of
// the ASHRAE Handbook of Fundamentals (2017) [ashrae-2017-ch1]. Its saturation
// pressure is that of Hyland and Wexler (1983) [hyland-wexler-1983], over ice
// below the triple point and over liquid water above it.
//
// A State holds three numbers from which everything else follows:
// temperature T in °C, humidity ratio W in kg of water per kg of dry air, and
// pressure P in Pa. Everything "per kg" is per kg of dry air, since dry air is
// what passes unchanged through a bed of malt while its water grows.
//
// There are two ways in. The checked functions (SaturationPressure, FromRH,
// FromWetBulb, New and so on) refuse whatever lies outside the equations. The
// unchecked ones (Saturation, SaturationSlope, HumidityRatio, VapourPressure,
// Enthalpy) are for loops whose arguments are known to be in range; they read
// a cubic table whose error is bounded by TableError and tested against the
// formula.
//
// Real air at saturation holds 0.4 to 1.2 % more vapour than the ideal mixture
// says, because of the enhancement factor that the handbook's tables include
// and its equations leave out.
