package ensemble

import (
	"maps"
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
	return append(list, dryings(p, l)...)
}

// withers tells whether a process withers its malt before the kiln: where it does not,
// nothing of it is open.
func withers(p *model.Process) bool {
	return slices.ContainsFunc(p.Stages, func(st model.Stage) bool { return st.Kind() == model.WitherStage })
}

// dryings are the factors of the kilns of a process, one for each kiln, however often the malt
// comes onto it: how fast one dries tells nothing of another. A process without a kiln has one too.
func dryings(p *model.Process, l *model.Learnt) []Unknown {
	kilns := kilnsOf(p)
	list := make([]Unknown, len(kilns))
	for i, k := range kilns {
		set := func(o *forecast.Options, v float64) { o.Drying = &v }
		if len(kilns) > 1 {
			set = dryingOf(k)
		}
		list[i] = factorOf(Drying, set, l.DryingOf(k))
		list[i].Kiln, list[i].OneOf = k, len(kilns) > 1
	}
	return list
}

// dryingOf sets the factor of one kiln of several. Options that were copied stay as they were.
func dryingOf(k *model.Kiln) func(*forecast.Options, float64) {
	return func(o *forecast.Options, v float64) {
		all := maps.Clone(o.DryingOf)
		if all == nil {
			all = map[*model.Kiln]float64{}
		}
		all[k] = v
		o.DryingOf = all
	}
}

// kilnsOf are the kilns of a process in the order in which the malt comes onto them, each
// once; nil stands for those of which nothing is said.
func kilnsOf(p *model.Process) []*model.Kiln {
	var kilns []*model.Kiln
	for _, st := range model.Every[*model.Kilning](p) {
		if !slices.Contains(kilns, st.Kiln) {
			kilns = append(kilns, st.Kiln)
		}
	}
	if kilns == nil {
		return []*model.Kiln{nil}
	}
	return kilns
}

// Of names the kiln that a factor of drying is of, where the process has several; else "".
func (u Unknown) Of() string {
	if !u.OneOf || u.Kiln == nil {
		return ""
	}
	return u.Kiln.Name
}

// factorOf is the unknown of one factor, log-normal around 1. Where its value was learnt
// with an error its standard deviation is
//
//	√((error/value)² + (scatter/value)²)
//
// with SpreadLeft of the usual for the scatter where none was learnt. Otherwise it is the usual.
func factorOf(which Factor, set func(*forecast.Options, float64), learnt *model.Factor) Unknown {
	open, usual := which.Usual()
	u := Unknown{Open: open, Scatter: Scatter{Law: LogNormal, SD: usual}, Factor: which, quantile: logNormal(usual), set: set}
	if learnt == nil {
		return u
	}
	if learnt.Error != nil {
		u.Scatter.SD = math.Hypot(learnt.Error.SI/learnt.Value.SI, scatterOf(learnt, usual))
	}
	u.quantile = logNormalBetween(u.Scatter.SD, model.LeastFactor/learnt.Value.SI, model.MostFactor/learnt.Value.SI)
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
