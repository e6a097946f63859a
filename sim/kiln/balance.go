package kiln

import "maltwright/sim/air"

// Balance is where the water and the heat of a kiln have gone since New: On + DrawnIn + Poured =
// Left + Gone for the water, and Heater + Recovered + Fan + Intake + Warmth = Warmed + Evaporated +
// Exhaust + Shed + WallHeat + WallLoss for the heat, each but for what is missing by rounding. Both
// stop at the flap by which the exhaust leaves the kiln, before the heat exchanger that it may have.
type Balance struct {
	On           float64 // water in the malt as it came on, kg
	DrawnIn      float64 // with the air that came in, kg
	Poured       float64 // on hot malt, kg
	Gone         float64 // with the exhaust, kg
	Left         float64 // in the malt now, kg
	WaterMissing float64 // what is missing of it, kg
	Condensed    float64 // of what is gone, that a heat exchanger let go, kg

	Heater      float64 // given by the heater, J
	Warmth      float64 // of the water that was poured, J above 0 °C
	Recovered   float64 // given to the fresh air by the exhaust in a heat exchanger, J
	Fan         float64 // given by the fan, J
	Intake      float64 // sensible heat above that of outside air, vapour included, that came in with air from elsewhere, J
	Warmed      float64 // sensible heat that dry matter and water of the malt have gained, J
	Evaporated  float64 // that turned the water into vapour of 0 °C, and loosened it from the malt, J
	Exhaust     float64 // sensible heat of the exhaust above that of outside air, vapour included, J
	Shed        float64 // led off into the room by the shell of a drum, or by malt that cools in still air, J
	WallHeat    float64 // that the walls of the kiln have taken up and hold, J; 0 where it says nothing of them
	WallLoss    float64 // lost to the room through the walls, J
	Returned    float64 // above fresh air, of the exhaust led back; it goes round within the kiln, J
	HeatMissing float64 // what is missing of the heat, J
}

// Balance gives that of the bed.
func (b *Bed) Balance() Balance {
	l := b.ledger
	loosened := b.bound()*l.DryMass - l.BoundAtStart
	w := Balance{
		On: l.WaterAtStart, DrawnIn: l.WaterDrawnIn, Poured: l.WaterPoured, Gone: l.WaterDrawnIn + l.WaterVented, Condensed: l.Condensed, Left: l.WaterInMalt,
		Heater: l.Heater, Recovered: l.Recovered, Fan: l.FanHeat, Warmth: l.HeatPoured, Shed: l.HeatShed, Warmed: l.HeatInMalt - l.HeatAtStart - loosened,
		Evaporated: l.WaterVented*air.EvaporationHeat + loosened,
		Exhaust:    l.HeatVented - l.WaterVented*air.EvaporationHeat, Returned: l.HeatReturned,
		Intake:   l.HeatIntake - l.WaterIntake*air.EvaporationHeat,
		WallHeat: l.WallHeat, WallLoss: l.WallLoss,
	}
	w.WaterMissing = w.On + w.DrawnIn + w.Poured - w.Gone - w.Left
	w.Exhaust += w.Intake
	w.HeatMissing = w.Heater + w.Recovered + w.Fan + w.Intake + w.Warmth - w.Warmed - w.Evaporated - w.Exhaust - w.Shed - w.WallHeat - w.WallLoss
	return w
}

// bound gives the heat of wetting that the malt has yet to set free, J for each kg of dry
// matter.
func (b *Bed) bound() float64 {
	sum := 0.0
	for i := range b.layers {
		wetting, _ := b.material.Wetting(b.layers[i].x)
		sum += wetting
	}
	return sum / float64(len(b.layers))
}
