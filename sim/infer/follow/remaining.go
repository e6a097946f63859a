package follow

import (
	"slices"

	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

// ToCome are the steps that end behind now, but for those of a few members only, and for
// the rest in store.
func (f *Following) ToCome() []ensemble.StepSpread {
	var steps []ensemble.StepSpread
	for _, s := range f.Ensemble.Steps() {
		if s.End.P50 > f.Now+justNow && s.End.Share >= rare && s.Stage != model.StoreStage {
			steps = append(steps, s)
		}
	}
	return steps
}

// Drivers ranks what is still unknown by how much of the spread of a figure goes with it,
// the most first. What chance brings about among so few members is left out: of n draws the
// square of a rank correlation is 1/n in the mean where there is none.
func (f *Following) Drivers(of func(*forecast.Totals) float64) []ensemble.Driver {
	return slices.DeleteFunc(f.Ensemble.Drivers(of), func(d ensemble.Driver) bool { return d.Share < chance/f.EffectiveSize })
}

// chance is how many times that mean a share must come to: of three hundred that have nothing
// to do with a figure one comes to more.
const chance = 9.0

// Factor is what the batch says so far of a factor of lot or house, or of the offset of
// its thermometer, K.
type Factor struct {
	Which       ensemble.Factor  // "" of the thermometer
	Unknown     ensemble.Unknown // what it is of the things that a process leaves open
	Thermometer bool
	Spread      ensemble.Spread
	Edge        int // −1 or 1 where its middle is pressed against the low or the high edge of what was thought possible, else 0
}

// edge is how many standard deviations of what is usual a middle must lie out to be at the
// edge: of a hundred lots one lies so far out on either side. The draws end at three.
const edge = 2.326

// edgeOf tells at which edge the middle of an axis lies.
func edgeOf(z float64) int {
	switch {
	case z < -edge:
		return -1
	case z > edge:
		return 1
	}
	return 0
}

// Factors are those of lot and house, in the order of the axes.
func (f *Following) Factors() []Factor {
	var out []Factor
	for i, a := range f.Trial.Axes {
		if a.Factor == "" && !a.Thermometer {
			continue
		}
		list, own := make([]float64, len(f.Z)), make([]float64, len(f.Z))
		for k, z := range f.Z {
			list[k], own[k] = a.Value(z[i]), z[i]
		}
		out = append(out, Factor{a.Factor, a.Unknown, a.Thermometer, ensemble.SpreadOf(list), edgeOf(ensemble.SpreadOf(own).P50)})
	}
	return out
}
