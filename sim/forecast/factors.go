package forecast

import "maltwright/lang/model"

// growing gives the options of lot and growth with what the house has learnt of them.
// Uptake was learnt of one lot, and counts for no other.
func (r *run) growing() (uptake, growth, respiration float64) {
	l := r.p.Learnt()
	if l == nil {
		return orOne(r.o.Uptake), orOne(r.o.Growth), orOne(r.o.Respiration)
	}
	uptake = r.learnt(r.o.Uptake, l.UptakeOf(r.p.Grain), Uptake, r.p.Grain.Name)
	return uptake, r.learnt(r.o.Growth, l.Growth, Growth, ""), r.learnt(r.o.Respiration, l.Respiration, Respiration, "")
}

// drying gives the option of drying with what the house has learnt of the kiln.
func (r *run) drying(k *model.Kiln) float64 {
	return r.learnt(r.o.Drying, r.p.Learnt().DryingOf(k), Drying, k.Name)
}

// learnt multiplies an option by a factor that was learnt, and says so. Without one the
// option stays as it is.
func (r *run) learnt(option *float64, f *model.Factor, figure Figure, of string) float64 {
	if f == nil {
		return orOne(option)
	}
	if u := (Used{figure, of, *f}); r.assume(Learnt{u, r.p.Learnt().Name}) {
		r.f.Learnt = append(r.f.Learnt, u)
	}
	return orOne(option) * f.Value.SI
}

func orOne(factor *float64) float64 {
	if factor == nil {
		return 1
	}
	return *factor
}
