package kiln

import "math"

// Ledger is the account of water and energy of the whole bed since New. What
// the malt lost must be what the air took, which is added up apart.
type Ledger struct {
	DryMass float64 // kg; a kiln loses none

	WaterAtStart float64 // in the malt, kg
	WaterInMalt  float64 // now, kg
	WaterToAir   float64 // carried off by the air between air-on and air-off, kg
	WaterVented  float64 // that left the kiln with the exhaust less what came in, kg
	WaterDrawnIn float64 // that came in with the fresh air, kg

	HeatAtStart float64 // enthalpy of the malt, J, from dry matter and liquid water at 0 °C
	HeatInMalt  float64 // now, J
	HeatToMalt  float64 // given by the air and by radiation, J; vapour carries heat away
	Heater      float64 // given by the heater, J
	HeatVented  float64 // that left with the exhaust less what came in, J

	WallHeat float64 // that the kiln's walls have taken up and hold, J
	WallLoss float64 // lost to the room through the walls, J

	WaterIntake float64 // that came in with air from elsewhere, beyond what as much outside air holds, kg
	HeatIntake  float64 // the same of its heat, that of its vapour included, J

	WaterPoured float64 // on hot malt, kg
	Steamed     float64 // of WaterToAir, what boiled off of it as it was poured, kg
	HeatPoured  float64 // that came with it, J
	HeatShed    float64 // led off into the room by the shell of a drum, or by malt that cools in still air, J

	HeatReturned float64 // above fresh air, of the exhaust led back, J
	Recovered    float64 // heat that the exchanger gave from the exhaust to the fresh air, J; HeatVented is before it
	Condensed    float64 // water that the exhaust let go in it, kg; WaterVented is before it
	FanHeat      float64 // of what the fan drew, in the air, J; a kiln without a Way has none
	FanEnergy    float64 // electricity that the fan drew, J; a kiln without a Way has none
	BoundAtStart float64 // heat of wetting that the malt had yet to set free, J

	AirPassed float64 // dry air through the bed, kg
}

// DrivenOff is the water that the kiln drove out of the malt, kg: what the air carried off, without the steam
// of water that was poured on the malt.
func (l Ledger) DrivenOff() float64 { return l.WaterToAir - l.Steamed }

// WaterError gives the gap of the water balance over the water at start, or,
// of malt that was drier, over a hundredth of its dry matter.
func (l Ledger) WaterError() float64 {
	return math.Abs(l.WaterInMalt+l.WaterToAir-l.WaterAtStart-l.WaterPoured) / math.Max(l.WaterAtStart+l.WaterPoured, l.DryMass/100)
}

// HeatError gives the gap of the malt's heat balance over the heat in it and
// given to it.
func (l Ledger) HeatError() float64 {
	return l.gap(l.HeatInMalt-l.HeatAtStart-l.HeatToMalt, l.HeatAtStart, l.HeatInMalt, l.HeatToMalt)
}

// KilnError gives the gap of the kiln's heat balance, heater, fan, heat recovered and water
// poured against malt, exhaust, walls and room, over all heat moved.
func (l Ledger) KilnError() float64 {
	return l.gap(l.Heater+l.Recovered+l.FanHeat+l.HeatPoured-l.HeatVented-l.HeatToMalt-l.HeatShed-l.WallHeat-l.WallLoss,
		l.Heater, l.Recovered, l.FanHeat, l.HeatVented, l.HeatToMalt, l.HeatShed, l.WallHeat, l.WallLoss)
}

// leastHeat is the heat, J per kg of dry matter, over which a gap is taken when
// less has been moved: what warms green malt by some two kelvin.
const leastHeat = 1e4

func (l Ledger) gap(difference float64, moved ...float64) float64 {
	sum := 0.0
	for _, h := range moved {
		sum += math.Abs(h)
	}
	return math.Abs(difference) / max(sum, leastHeat*l.DryMass)
}

func (b *Bed) opening() Ledger {
	x, h := b.means()
	mass := b.dryMass()
	return Ledger{
		DryMass: mass, WaterAtStart: x * mass, WaterInMalt: x * mass,
		HeatAtStart: h * mass, HeatInMalt: h * mass, BoundAtStart: b.bound() * mass,
	}
}

// recover books what the heat exchanger did in a share of a step, m² s.
func (l *Ledger) recover(b *Bed, f flow, share float64) {
	if b.kit.Recovers > 0 {
		l.Recovered += share * b.recovered(f)
		l.Condensed += share * b.condensed(f)
	}
}

// add books a step of dt seconds: from the air's side what it carried, from
// the malt's side what is in it.
func (l *Ledger) add(b *Bed, dt float64) {
	for i, f := range b.flows {
		share := weights[i] * dt * b.kit.Area
		dry := share * f.g
		l.AirPassed += dry
		l.WaterToAir += dry * (f.off.w - f.on.w)
		l.WaterVented += dry * (1 - f.back) * (f.off.w - f.fresh.w)
		l.WaterDrawnIn += dry * (1 - f.back) * f.fresh.w
		l.HeatToMalt += dry*(f.on.enthalpy()-f.off.enthalpy()) + share*f.radiant
		rise := dry * (f.out.enthalpy() - f.fresh.enthalpy())
		l.WallLoss += share * f.lost
		if f.apart {
			l.WallLoss -= share * f.taken
		}
		l.HeatVented += (1 - f.back) * rise
		l.HeatReturned += f.back * rise
		l.Heater += share * b.heat(f)
		l.HeatShed += share * b.shed(f)
		l.recover(b, f, share)
		l.FanHeat += share * f.fan
		if b.feed.fed() {
			l.WaterIntake += dry * (1 - f.back) * (f.fresh.w - b.ambient.W)
			l.HeatIntake += dry * (1 - f.back) * (f.fresh.enthalpy() - b.ambient.Enthalpy())
		}
	}
	if b.kit.Way != nil {
		l.FanEnergy += dt * b.fanPower(b.flows[stageCount-1])
	}
	x, h := b.means()
	l.WallHeat = b.wallHeat()
	l.WaterInMalt, l.HeatInMalt = x*l.DryMass, h*l.DryMass
}
