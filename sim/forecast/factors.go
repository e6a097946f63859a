package forecast

import (
	"maltwright/lang/model"
	"maltwright/sim/grain"
)

// growing sets the factors of a lot: the options, with what the house has learnt. What was
// learnt of one lot counts for no other.
func (r *run) growing(lot *grain.Lot) {
	o, l, g := r.o, r.p.Learnt(), r.p.Grain
	if l == nil {
		l = &model.Learnt{}
	}
	lot.UptakeFactor = r.learnt(o.Uptake, l.UptakeOf(g), Uptake, g.Name)
	lot.HoldLoose(r.learnt(o.HuskWater, l.HuskWaterOf(g), HuskWater, g.Name))
	lot.GrowthFactor = r.learnt(o.Growth, l.Growth, Growth, "")
	lot.ChitBy(r.learnt(o.Chit, l.ChitOf(g), Chit, g.Name))
	lot.RespirationFactor = r.learnt(o.Respiration, l.Respiration, Respiration, "")
}

// withering gives the option of withering with what the house has learnt of it.
func (r *run) withering() float64 {
	l := r.p.Learnt()
	if l == nil {
		return orOne(r.o.Withering)
	}
	return r.learnt(r.o.Withering, l.Withering, Withering, "")
}

// drying gives the options of drying with what the house has learnt of the kiln, which is
// nil where the stage names none.
func (r *run) drying(k *model.Kiln) float64 {
	option := r.o.Drying
	if own, ok := r.o.DryingOf[k]; ok {
		option = new(orOne(option) * own)
	}
	if k == nil {
		return orOne(option)
	}
	return r.learnt(option, r.p.Learnt().DryingOf(k), Drying, k.Name)
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
