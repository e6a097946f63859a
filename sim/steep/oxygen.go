package steep

import (
	"math"

	"maltwright/sim/air"
)

const (
	// firstDemand, mg of oxygen per kg of grain and hour: handbook
	// [kent-evers].
	firstDemand = 1.0
	// demandGrowth: the demand of the third soak against the first; handbook
	// [kent-evers].
	demandGrowth = 10.0
	// demandTime, s since the first wetting: when the third soak usually
	// begins, in the schedules of [canadian-guide]; the demand rises to then in
	// a straight line of its logarithm, and stays. Calibrated.
	demandTime = 32 * hour

	milligram = 1e-6
)

// OxygenInWater gives the oxygen dissolved in water that stands with air at sea
// level, mg/l: 468/(31.6 + t), t in °C, 0 to 40. A textbook fit
// [thomann-mueller-1987], from memory, within 0.1 mg/l of 11.3, 10.1 and 9.1 at
// 10, 15 and 20 °C. Outside it returns a *[air.RangeError].
func OxygenInWater(t float64) (float64, error) {
	if err := air.Within("water temperature", t, "°C", lowestWater, highestWater); err != nil {
		return 0, err
	}
	return saturation(t), nil
}

func saturation(t float64) float64 { return 468 / (31.6 + t) }

// demand gives the oxygen taken, mg per kg of grain as received, from the first
// wetting to the time t, s: the integral of 10^(min(t, t3)/t3) mg/(kg·h).
func demand(t float64) float64 {
	rise := demandTime / hour / math.Log(demandGrowth) * firstDemand
	if t <= demandTime {
		return rise * math.Expm1(math.Log(demandGrowth)*t/demandTime)
	}
	return rise*(demandGrowth-1) + firstDemand*demandGrowth*(t-demandTime)/hour
}

// demandMet is the inverse of demand: the time, s, by which so much is taken.
func demandMet(taken float64) float64 {
	rise := demandTime / hour / math.Log(demandGrowth) * firstDemand
	if most := rise * (demandGrowth - 1); taken > most {
		return demandTime + (taken-most)*hour/(firstDemand*demandGrowth)
	}
	return demandTime / math.Log(demandGrowth) * math.Log1p(taken/rise)
}

// draws is what kernels in water take of what it holds, kg of oxygen per kg of first dry
// matter and second, at the time t since the first wetting: the derivative of demand.
func (s *State) draws(t float64) float64 {
	return s.each(firstDemand * math.Pow(demandGrowth, math.Min(t/demandTime, 1)) / hour)
}

// each turns mg per kg of grain as received into kg per kg of first dry matter.
func (s *State) each(mg float64) float64 { return mg * milligram * (1 + s.lot.Moisture0) }

// Oxygen is what the water still holds, mg per kg of grain as received; nil in
// air.
func (s *State) Oxygen() float64 {
	if !s.submerged {
		return 0
	}
	return s.oxygen
}

// OxygenLasts is the time, s from now, after which the water the grain stands
// in has no oxygen left, if it stays still. In air it is nil.
func (s *State) OxygenLasts() float64 {
	if !s.submerged {
		return 0
	}
	return demandMet(demand(s.wetTime)+s.oxygen) - s.wetTime
}

// drown has the kernels die that have gone without oxygen for too long. Those that had chitted die as
// the others do.
func (s *State) drown() {
	dead := s.lot.Profile.DrownedBy(s.held)
	if dead <= s.lot.Drowned {
		return
	}
	s.chitted *= (1 - dead) / (1 - s.lot.Drowned)
	s.lot.Drowned = dead
}

// Drowned is the share of the kernels that have drowned, 0 to 1.
func (s *State) Drowned() float64 { return s.lot.Drowned }

// AirlessNow is how long the kernels have had no oxygen on end, s: as long with it makes up for
// that, and fresh water for as long as kernels bear.
func (s *State) AirlessNow() float64 { return s.held }

// Airless is the time spent under water without oxygen, s, over all soaks.
func (s *State) Airless() float64 { return s.airless }
