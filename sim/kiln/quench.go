package kiln

import (
	"errors"

	"maltwright/sim/air"
	"maltwright/sim/drying"
)

// Quenched is what water did that was poured on hot malt.
type Quenched struct {
	Water  float64 // kg that was poured
	Steam  float64 // kg of it that boiled off; the rest wets the malt
	Volume float64 // m³ of that steam, as it boils
	Each   float64 // m³ of steam of a kg of water

	Before, After float64 // mean temperature of the malt, °C
	Boils         float64 // °C at which water does
	Moisture      float64 // of the malt behind it, wet basis
}

// MostPoured bounds the water that is poured, kg for each kg of dry matter.
const MostPoured = 1.5

// Quench pours so many kg of water of t °C (0 to 100) evenly on the malt, a little at a time. What
// meets malt hotter than water boils boils off whole and leaves as steam of that
// heat, until the malt has come down to the boil: e·(h_v − 4187·t) = h − h_boil per kg of dry matter.
// What is left wets the malt and cools it: h' = h + w·4187·t − e·h_v. The heat that
// wetting sets free boils off a little more. All of it happens at once. More than 1.5 kg
// for each kg of dry matter is a *[air.RangeError].
func (b *Bed) Quench(water, t float64) (Quenched, error) {
	each := water / b.dryMass()
	err := errors.Join(air.Within("water poured on the malt, for each kg of its dry matter", each, "kg", 0, MostPoured), air.Within("temperature of the water", t, "°C", 0, 100))
	if err != nil {
		return Quenched{}, err
	}
	q := Quenched{Water: water, Before: b.meanT(), Boils: air.Boils(b.ambient.P)}
	vapour := air.VapourEnthalpy(q.Boils)
	for i := range b.layers {
		l := &b.layers[i]
		steam := b.boiledOff(l, each, t, q.Boils)
		l.x += each - steam
		l.h += each*air.WaterHeat*t - steam*vapour
		l.t = drying.Temperature(b.material, l.x, l.h)
		l.mean = l.t
		q.Steam += steam * b.dryMass() / float64(len(b.layers))
	}
	b.even = false
	b.ledger.pour(b, water, t, q.Steam, vapour)
	q.After, q.Moisture = b.meanT(), b.WetBasis()
	q.Each = air.VapourVolume(q.Boils, b.ambient.P)
	q.Volume = q.Steam * q.Each
	return q, nil
}

// boiledOff gives how much of the water boils off the layer, kg for each kg of dry matter.
func (b *Bed) boiledOff(l *bedLayer, water, t, boils float64) float64 {
	if l.t <= boils {
		return 0
	}
	vapour := air.VapourEnthalpy(boils)
	first := min(water, (l.h-drying.Enthalpy(b.material, l.x, boils))/(vapour-air.WaterHeat*t))
	wetting := func(steam float64) float64 { // J/kg that are missing for the boil, once the rest has wetted it
		return drying.Enthalpy(b.material, l.x+water-steam, boils) - (l.h + water*air.WaterHeat*t - steam*vapour)
	}
	if wetting(first) >= 0 {
		return first
	}
	return root(first, water, first, vapour, 1e-3, wetting)
}

// pour books water on the malt, and the steam that it became, with its enthalpy, J/kg.
func (l *Ledger) pour(b *Bed, water, t, steam, enthalpy float64) {
	l.WaterPoured += water
	l.HeatPoured += water * air.WaterHeat * t
	l.WaterToAir += steam
	l.Steamed += steam
	l.WaterVented += steam
	l.HeatVented += steam * enthalpy
	l.HeatToMalt += water*air.WaterHeat*t - steam*enthalpy
	x, h := b.means()
	l.WaterInMalt, l.HeatInMalt = x*l.DryMass, h*l.DryMass
}
