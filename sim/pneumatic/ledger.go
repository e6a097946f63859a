package pneumatic

import "maltwright/sim/grain"

// Ledger is the account of the bed since [New]. Heat is counted from dry matter
// and liquid water at 0 °C:
//
//	WaterNow = WaterStart + Grown + Sprinkled − Evaporated
//	HeatNow  = HeatStart + Respired + SprinkledHeat − Carried − Faces − Vapour
//
// What the air took is added up apart from what the grain lost.
type Ledger struct {
	DryStart, DryNow     float64 // dry matter, kg
	Burnt                float64 // dry matter respired, kg
	WaterStart, WaterNow float64 // kg
	Grown                float64 // water that respiration made, kg
	Sprinkled            float64 // kg
	Evaporated           float64 // to the air blown through, and off the face, kg
	OffFace              float64 // of that off the open face, kg

	HeatStart, HeatNow float64 // J
	Respired           float64 // made by growth, J
	SprinkledHeat      float64 // brought by sprinkling, J
	Carried            float64 // off by the air blown through, J
	Faces              float64 // lost by the faces, J
	Vapour             float64 // gone with the water off the open face, J
}

// book adds a flow of dt seconds.
func (l *Ledger) book(f *flow, dt float64) {
	l.Burnt += dt * f.burn
	l.Grown += dt * f.burn * grain.StarchWater
	l.Respired += dt * f.burn * grain.StarchHeat
	l.Evaporated += dt * f.vapour
	l.OffFace += dt * f.vapour
	l.Faces += dt * f.faces
	l.Vapour += dt * f.latent
	if f.g > 0 {
		l.Evaporated += dt * f.g * (f.offW - f.on.W)
		l.Carried += dt * f.g * (f.offH - f.on.Enthalpy())
	}
}

// Ledger returns the account of the bed.
func (b *Bed) Ledger() Ledger {
	l := b.ledger
	l.DryNow, l.WaterNow, l.HeatNow = b.DryMatter(), b.water(), b.heat()
	return l
}

// Plant is the account of the air since [New]: what it took to make air-on, and
// what left with the exhaust, less what came in as fresh air.
//
//	Vented     = Evaporated − OffFace + Sprayed − Drained
//	VentedHeat = Carried + Heater − Cooler + Fan + WaterHeat
type Plant struct {
	Heater, Cooler         float64 // J
	Fan                    float64 // heat of the fan, J
	PeakHeater, PeakCooler float64 // W
	Short                  float64 // what cooler and heater lacked for the air-on asked, J
	PeakShort              float64 // W

	Sprayed   float64 // water evaporated to humidify the air, kg
	Drained   float64 // water taken out of it, kg
	WaterHeat float64 // brought by the first less that gone with the second, J

	AirPassed  float64 // dry air through the bed, kg
	Vented     float64 // water, kg
	VentedHeat float64 // J
}

// Plant returns the account of the air.
func (b *Bed) Plant() Plant { return b.plant }
