package ensemble

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// Unknown is something that a process does not settle.
type Unknown struct {
	Open    Open
	Scatter Scatter
	Factor  Factor // which factor of lot or house it is; "" where it is none

	Kiln  *model.Kiln // of drying: which kiln; nil where the process names none
	OneOf bool        // of drying: the process has several kilns, each with a factor of its own

	quantile func(p float64) float64
	set      func(*forecast.Options, float64)
}

// The spreads of lot and house, as standard deviations (calibrated: lots of one
// variety differ about threefold in the speed at which they take up water, houses
// by a fifth in how they dry).
const (
	uptakeSpread = 0.35 // of the logarithm
	growthSpread = 0.12

	// huskWaterSpread: husk and film of seven lots of barley held 0.095 to 0.173 kg/kg, by
	// a fit to the weighings of [molina-cano-1995]. Seven draws span 2.7 standard deviations
	// in the mean, and the model has 0.14: 0.22 of the logarithm, 0.03 kg/kg.
	huskWaterSpread = 0.22
	// chitSpread: sound lots have a germination index of 6.7 to 9.4 (handbook, from memory),
	// which takes factors from 0.33 to 1, a span of 1.1 in the logarithm. Taken as nine of
	// ten lots it is 3.3 standard deviations: lots differ by 0.35 of the logarithm. The middle
	// of the span lies 0.55 below the model, which other sources put where it is: taken as
	// somewhere between, even, it is out by 0.55/√3 = 0.32. Together 0.47, and a little for the
	// sleepy and the weak, which lie beyond what is sound.
	chitSpread = 0.5

	respirationSpread = 0.20
	dryingSpread      = 0.20
	// witheringSpread: air of 0 to 1 m/s over the piece, where 0.3 is taken, carries off 0.83
	// to 1.39 of the vapour, and one or two kernels lie open to it; taken as nine of ten houses
	// these are 0.16 and 0.21. Rates of two laboratories for one cereal differ by a third.
	witheringSpread = 0.30
	sorptionSpread  = 0.01  // kg/kg dry basis
	moistureSpread  = 0.003 // of the whole weight: an oven sample
	guessedMoisture = 0.01  // the same where the lot does not say
)

// What the equations miss, as standard deviations of the logarithm (calibrated: what
// published figures leave unexplained by the spreads of lot and house, leaving out one
// source at a time; see package outside).
const (
	lateUptakeSpread = 0.09
	lateGrowthSpread = 0.08
	lateDryingSpread = 0.19
	lateColourSpread = 0.33
)

// Missed tells whether it is of what the equations miss, and of no lot or house.
func (u Unknown) Missed() bool {
	return u.Open == LateUptake || u.Open == LateGrowth || u.Open == LateDrying || u.Open == LateColour
}

// missed are the unknowns of what the equations miss. Nobody can state them: each is of a
// batch, and of no house.
func missed() []Unknown {
	of := func(open Open, sd float64, set func(*forecast.Options, float64)) Unknown {
		return Unknown{Open: open, Scatter: Scatter{Law: LogNormal, SD: sd}, quantile: logNormal(sd), set: set}
	}
	return []Unknown{
		of(LateUptake, lateUptakeSpread, func(o *forecast.Options, v float64) { o.LateUptake = &v }),
		of(LateGrowth, lateGrowthSpread, func(o *forecast.Options, v float64) { o.LateGrowth = &v }),
		of(LateDrying, lateDryingSpread, func(o *forecast.Options, v float64) { o.LateDrying = &v }),
		of(LateColour, lateColourSpread, func(o *forecast.Options, v float64) { o.LateColour = &v }),
	}
}

// UnknownsOf lists what the process leaves open.
func UnknownsOf(p *model.Process) []Unknown {
	list := append(factorsOf(p),
		Unknown{Open: DryAirMoisture, Scatter: Scatter{SD: sorptionSpread}, quantile: normal(sorptionSpread), set: func(o *forecast.Options, v float64) { o.Sorption = v }},
		moistureOf(p))
	list = append(list, missed()...)
	if s := p.Site; s != nil {
		list = append(list, bandOf(s.Air, RoomAir, func(o *forecast.Options, v float64) { o.AirAt = v })...)
		list = append(list, bandOf(s.Humidity, RoomHumidity, func(o *forecast.Options, v float64) { o.HumidityAt = v })...)
		list = append(list, bandOf(s.Water, DrawnWater, func(o *forecast.Options, v float64) { o.WaterAt = v })...)
	}
	return append(list, Unknown{Open: PlaceInBands, Scatter: Scatter{Law: Even}, quantile: even,
		set: func(o *forecast.Options, v float64) { o.BandAt = v }})
}

func moistureOf(p *model.Process) Unknown {
	sd := moistureSpread
	if p.Grain == nil || p.Grain.Moisture == nil {
		sd = guessedMoisture
	}
	return Unknown{Open: RawMoisture, Scatter: Scatter{SD: sd}, quantile: normal(sd), set: func(o *forecast.Options, v float64) { o.GrainMoisture = v }}
}

// bandOf is an unknown that is even over a band of the site, if it is a band.
func bandOf(r *model.Range, open Open, set func(*forecast.Options, float64)) []Unknown {
	if r == nil || r.Single() {
		return nil
	}
	return []Unknown{{Open: open, Scatter: Scatter{Law: Even, Band: r.Range}, quantile: even, set: set}}
}

// even runs from −1 to 1.
func even(p float64) float64 { return 2*p - 1 }

// tails cuts the normal distributions off at the 0.1 and 99.9 % points, so that no
// member is a lot that nobody has.
const tails = 1e-3

func normal(sd float64) func(float64) float64 {
	return func(p float64) float64 {
		return sd * distuv.UnitNormal.Quantile(tails+p*(1-2*tails))
	}
}

func logNormal(sd float64) func(float64) float64 {
	n := normal(sd)
	return func(p float64) float64 { return math.Exp(n(p)) }
}
