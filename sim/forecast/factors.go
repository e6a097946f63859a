package forecast

import (
	"fmt"

	"maltwright/lang/model"
)

// Used is a figure that the house has learnt and the forecast went by.
type Used struct {
	What   string // "growth", "drying in \"tray kiln\""
	Factor model.Factor
}

// growing gives the options of lot and growth with what the house has learnt of them.
// Uptake was learnt of one lot, and counts for no other.
func (r *run) growing() (uptake, growth, respiration float64) {
	l := r.p.Learnt()
	if l == nil {
		return orOne(r.o.Uptake), orOne(r.o.Growth), orOne(r.o.Respiration)
	}
	uptake = r.learnt(r.o.Uptake, l.UptakeOf(r.p.Grain), fmt.Sprintf("uptake of %q", r.p.Grain.Name))
	return uptake, r.learnt(r.o.Growth, l.Growth, "growth"), r.learnt(r.o.Respiration, l.Respiration, "respiration")
}

// drying gives the option of drying with what the house has learnt of the kiln.
func (r *run) drying(k *model.Kiln) float64 {
	return r.learnt(r.o.Drying, r.p.Learnt().DryingOf(k), fmt.Sprintf("drying in %q", k.Name))
}

// learnt multiplies an option by a factor that was learnt, and says so. Without one the
// option stays as it is.
func (r *run) learnt(option *float64, f *model.Factor, what string) float64 {
	if f == nil {
		return orOne(option)
	}
	known := len(r.f.Assumed)
	r.assume(what, f.Value.String()+" of the model's", fmt.Sprintf("learnt, house %q", r.p.Learnt().Name))
	if len(r.f.Assumed) > known {
		r.f.Learnt = append(r.f.Learnt, Used{what, *f})
	}
	return orOne(option) * f.Value.SI
}

func orOne(factor *float64) float64 {
	if factor == nil {
		return 1
	}
	return *factor
}
