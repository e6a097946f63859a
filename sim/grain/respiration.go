package grain

import (
	"math"

	"maltwright/sim/powers"
)

// What burning starch gives and takes, per kg of starch: published, from
// C6H10O5 + 6 O2 → 6 CO2 + 5 H2O with the atomic weights 12.011, 1.008 and
// 15.999 (IUPAC abridged), and the heat of combustion of starch to liquid
// water, 17.4 MJ/kg (handbook, from memory).
const (
	starchMolar = 6*12.011 + 10*1.008 + 5*15.999

	// StarchHeat is the heat set free, J per kg of starch.
	StarchHeat = 17.4e6
	// StarchCO2 is the carbon dioxide given off, kg per kg of starch: 1.63.
	StarchCO2 = 6 * (12.011 + 2*15.999) / starchMolar
	// StarchWater is the water that stays in the kernel, kg per kg of starch:
	// 0.556.
	StarchWater = 5 * (2*1.008 + 15.999) / starchMolar
	// StarchO2 is the oxygen taken, kg per kg of starch: 1.184.
	StarchO2 = 6 * 2 * 15.999 / starchMolar
)

const (
	// respirationQ10, per 10 K, up to the temperature of the table: calibrated
	// (respiration about doubles in 10 K, handbook, from memory [narziss]).
	respirationQ10 = 2.2
	// warmRespirationQ10, per 10 K, above it: calibrated. Barley that grows at 24 °C
	// loses hardly more than at 16 °C [mueller-2014, abstract seen]; the clock runs half
	// as fast again there, so that an equal loss at equal growth is 1.5^(10/8) = 1.66.
	warmRespirationQ10 = 1.7
	// dayClock, °C·h: one day at 16 °C on barley's clock, the step of the
	// respiration table, for a full acrospire at fullClock. By definition.
	dayClock = 24 * 16.0
	// fullClock, °C·h: barley's clock to a full acrospire; see barleyMarks.
	fullClock = 2400.0
	// sleepShare, of the table's first day: the respiration of a wet kernel whose
	// clock has not moved. Calibrated to a steep loss of about half a per cent
	// (common practice).
	sleepShare = 0.4
	// heatFade, K above BestT, and heatDeath, K above CeilingT: respiration
	// follows Q10 up to the first and has stopped at the second. Calibrated;
	// green malt above 50 °C respires no more (common practice).
	heatFade  = 5.0
	heatDeath = 10.0

	secondsPerDay = 86400.0
)

// perKelvin and perWarmKelvin are the logarithms of the two, over their ten kelvin.
var perKelvin, perWarmKelvin = math.Log(respirationQ10) / 10, math.Log(warmRespirationQ10) / 10

// RespirationSpeed gives the dry matter respired, as a share of the first dry
// matter per second, at the growth clock (°C·h), the grain temperature t (°C),
// the wet-basis moisture w and the share access of air, 0 to 1: table(clock) ·
// q^((t − T_table)/10) · φ(w, clock) · access · alive, q 2.2 below T_table and 1.7 above
// it. The table is read in straight
// lines between the middles of its days and stays at its last value. From 5 K
// above the best temperature of growth it falls in a straight line to nil, 10 K
// above the ceiling. Standing: calibrated to [narziss] at malting temperatures;
// over 25 °C it is an extrapolation.
func (l *Lot) RespirationSpeed(clock, t, w, access float64) float64 {
	p := &l.Profile
	moist := p.MoistFactor(w, clock) * access * (1 - l.Drowned)
	if moist == 0 {
		return 0
	}
	return p.respirationTable(clock) * p.respirationWarmth(t) * moist * l.RespirationFactor / secondsPerDay
}

// respirationTable is the rate at the table's own temperature, per day.
func (p *Profile) respirationTable(clock float64) float64 {
	r := &p.Respiration
	day := dayClock * p.Marks[3] / fullClock
	first := p.Chit + day/2
	if clock <= first {
		return r[0] * (sleepShare + (1-sleepShare)*max(0, clock)/first)
	}
	x := (clock - first) / day
	if !(x < float64(len(r)-1)) {
		return r[len(r)-1]
	}
	i := int(x)
	return r[i] + (r[i+1]-r[i])*(x-float64(i))
}

func (p *Profile) respirationWarmth(t float64) float64 {
	fade, death := p.BestT+heatFade, p.CeilingT+heatDeath
	if t >= death {
		return 0
	}
	over := min(t, fade) - p.RespirationT
	per := perKelvin
	if over > 0 {
		per = perWarmKelvin
	}
	q := powers.Exp(per * over)
	if t > fade {
		q *= (death - t) / (death - fade)
	}
	return q
}
