package outside

import (
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"
	"gonum.org/v1/gonum/stat/samplemv"

	"maltwright/lang/model"
	"maltwright/sim/drying"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/grain"
)

// member asks a row's model for another lot and house: where a row takes a test, it may
// be given one. What a row is reckoned from - a lot, malt, a bed, a forecast - is then
// of that lot and house.
type member struct {
	testing.TB
	options forecast.Options
}

// optionsOf are those of a member, and the usual ones of every other test.
func optionsOf(t testing.TB) forecast.Options {
	if m, ok := t.(member); ok {
		return m.options
	}
	return forecast.Options{}
}

func isMember(t testing.TB) bool {
	_, is := t.(member)
	return is
}

func orOne(factor *float64) float64 {
	if factor == nil {
		return 1
	}
	return *factor
}

// lotOf makes a lot that of a member.
func lotOf(t testing.TB, l grain.Lot) grain.Lot {
	o := optionsOf(t)
	w := wet(l.Moisture0) + o.GrainMoisture
	l.Moisture0 = dry(w)
	l.UptakeFactor, l.GrowthFactor, l.RespirationFactor = orOne(o.Uptake), orOne(o.Growth), orOne(o.Respiration)
	l.HoldLoose(orOne(o.HuskWater))
	l.ChitBy(orOne(o.Chit))
	l.HoldCore(orOne(o.LateUptake))
	l.LateGrowth = orOne(o.LateGrowth)
	return l
}

// maltOf is barley malt of a member.
func maltOf(t testing.TB) drying.Malt {
	o := optionsOf(t)
	return drying.Malt{}.With(o.Drying, o.Sorption).Bound(o.LateDrying)
}

// unknowns are those of lot and house: of a process that says nothing.
func unknowns() []ensemble.Unknown { return ensemble.UnknownsOf(&model.Process{}) }

// members draws n lots and houses by a Latin hypercube: with what the equations miss, or
// with these as the equations have them.
func members(n int, missed bool) []forecast.Options {
	list := unknowns()
	source := rand.NewPCG(1, 2)
	cube := mat.NewDense(n, len(list), nil)
	samplemv.LatinHypercube{Q: distmv.NewUnitUniform(len(list), source), Src: source}.Sample(cube)
	out := make([]forecast.Options, n)
	for i := range out {
		for k, u := range list {
			if missed || !u.Missed() {
				u.Set(&out[i], cube.At(i, k))
			}
		}
	}
	return out
}
