package ensemble

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// Factor names a factor of lot or house as a house block does.
type Factor string

// The factors.
const (
	Uptake      Factor = "uptake"
	HuskWater   Factor = "husk-water"
	Growth      Factor = "growth"
	Chit        Factor = "chit"
	Respiration Factor = "respiration"
	Withering   Factor = "withering"
	Drying      Factor = "drying"
)

// usually is what each factor is of the things that a process leaves open, and its usual
// standard deviation, of the logarithm.
var usually = map[Factor]struct {
	open Open
	sd   float64
}{
	Uptake: {LotUptake, uptakeSpread}, HuskWater: {LotHuskWater, huskWaterSpread}, Growth: {LotGrowth, growthSpread}, Chit: {LotChit, chitSpread},
	Respiration: {LotRespiration, respirationSpread}, Withering: {HouseWithering, witheringSpread}, Drying: {KilnDrying, dryingSpread},
}

// Usual is what the factor is of the things that a process leaves open, and the standard
// deviation of its logarithm where nothing was learnt.
func (f Factor) Usual() (Open, float64) { return usually[f].open, usually[f].sd }

// OfLot tells whether the factor is of one lot, and of no other that the house malts.
func (f Factor) OfLot() bool { return f == Uptake || f == HuskWater || f == Chit }

// SpreadLeft is the part of the usual spread of a factor that is left once the house has
// learnt its value and not how much its batches differ, since batches of one house differ
// too (calibrated: no house has given us enough batches to tell).
const SpreadLeft = 0.5

// factorsOf are the factors of lot and house. What the house has learnt of one moves
// its middle in the forecast itself; here its error narrows the spread.
func factorsOf(p *model.Process) []Unknown {
	l := p.Learnt()
	if l == nil {
		l = &model.Learnt{}
	}
	list := []Unknown{
		factorOf(Uptake, func(o *forecast.Options, v float64) { o.Uptake = &v }, l.UptakeOf(p.Grain)),
		factorOf(HuskWater, func(o *forecast.Options, v float64) { o.HuskWater = &v }, l.HuskWaterOf(p.Grain)),
		factorOf(Growth, func(o *forecast.Options, v float64) { o.Growth = &v }, l.Growth),
		factorOf(Chit, func(o *forecast.Options, v float64) { o.Chit = &v }, l.ChitOf(p.Grain)),
		factorOf(Respiration, func(o *forecast.Options, v float64) { o.Respiration = &v }, l.Respiration),
	}
	if withers(p) {
		list = append(list, factorOf(Withering, func(o *forecast.Options, v float64) { o.Withering = &v }, l.Withering))
	}
	return append(list, factorOf(Drying, func(o *forecast.Options, v float64) { o.Drying = &v }, dryings(p, l)...))
}

// withers tells whether a process withers its malt before the kiln: where it does not,
// nothing of it is open.
func withers(p *model.Process) bool {
	return slices.ContainsFunc(p.Stages, func(st model.Stage) bool { return st.Kind() == model.WitherStage })
}

// dryings are the factors that were learnt of the kilns of a process, nil for a kiln of
// which none was.
func dryings(p *model.Process, l *model.Learnt) []*model.Factor {
	var list []*model.Factor
	for _, st := range p.Stages {
		if k, ok := st.(*model.Kilning); ok {
			list = append(list, l.DryingOf(k.Kiln))
		}
	}
	return list
}

// factorOf is the unknown of one factor, log-normal around 1. Where its value was learnt
// with an error its standard deviation is
//
//	√((error/value)² + (scatter/value)²)
//
// with SpreadLeft of the usual for the scatter where none was learnt. Otherwise it is the usual.
// One draw serves all kilns of a process, so of several the one that is known worst counts.
func factorOf(which Factor, set func(*forecast.Options, float64), learnt ...*model.Factor) Unknown {
	open, usual := which.Usual()
	u := Unknown{Open: open, Scatter: Scatter{Law: LogNormal, SD: usual}, Factor: which, quantile: logNormal(usual), set: set}
	known, sd, low, high := len(learnt) > 0, 0.0, 0.0, math.Inf(1)
	for _, f := range learnt {
		if f != nil {
			low, high = max(low, model.LeastFactor/f.Value.SI), min(high, model.MostFactor/f.Value.SI)
		}
		if known = known && f != nil && f.Error != nil; known {
			sd = max(sd, math.Hypot(f.Error.SI/f.Value.SI, scatterOf(f, usual)))
		}
	}
	if !known {
		sd = usual
	} else {
		u.Scatter.SD = sd
	}
	if high < math.Inf(1) {
		u.quantile = logNormalBetween(sd, low, high)
	}
	return u
}

// scatterOf is how far batches differ from a factor that was learnt, as a part of it.
func scatterOf(f *model.Factor, usual float64) float64 {
	if f.Scatter == nil {
		return SpreadLeft * usual
	}
	return f.Scatter.SI / f.Value.SI
}

// logNormalBetween is log-normal around 1 with its tails cut off at the latest at low
// and high: no member is a house that the language could not state.
func logNormalBetween(sd, low, high float64) func(float64) float64 {
	from := max(tails, distuv.UnitNormal.CDF(math.Log(low)/sd))
	to := min(1-tails, distuv.UnitNormal.CDF(math.Log(high)/sd))
	return func(p float64) float64 {
		return math.Exp(sd * distuv.UnitNormal.Quantile(from+p*(to-from)))
	}
}
