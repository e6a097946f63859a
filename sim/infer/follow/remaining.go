package follow

import (
	"maltwright/lang/model"
	"maltwright/sim/ensemble"
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

// Factor is what the batch says so far of a factor of lot or house, or of the offset of
// its thermometer, K.
type Factor struct {
	Which       ensemble.Factor // "" of the thermometer
	Thermometer bool
	Spread      ensemble.Spread
}

// Factors are those of lot and house, in the order of the axes.
func (f *Following) Factors() []Factor {
	var out []Factor
	for i, a := range f.Trial.Axes {
		if a.Factor == "" && !a.Thermometer {
			continue
		}
		list := make([]float64, len(f.Z))
		for k, z := range f.Z {
			list[k] = a.Value(z[i])
		}
		out = append(out, Factor{a.Factor, a.Thermometer, ensemble.SpreadOf(list)})
	}
	return out
}
