package forecast

import (
	"maltwright/lang/model"
	"maltwright/sim/grain"
)

// What is taken for granted of green malt of which only that is said (common practice).
const (
	usualGrowth = 0.75        // the length of its acrospire, as a share of the kernel
	grownBefore = 5 * 86400.0 // s since it was first wetted
)

// lot gives the lot, and what it holds as it comes, kg of water for each kg of dry matter.
func (r *run) lot() (grain.Lot, float64, error) {
	g := r.p.Grain
	profile, err := grain.Of(g.Species.Text)
	if err != nil {
		return grain.Lot{}, 0, err
	}
	w := r.lotMoisture() + r.o.GrainMoisture
	x, err := grain.DryBasis(w)
	if err != nil {
		return grain.Lot{}, 0, err
	}
	first := x
	if !g.Raw() { // the grain that it was
		first = UsualMoisture / (1 - UsualMoisture)
	}
	lot := grain.LotOf(profile, r.p.Charge.SI*(1-w), first)
	r.growing(&lot)
	lot.HoldCore(orOne(r.o.LateUptake))
	lot.LateGrowth, lot.Forms = orOne(r.o.LateGrowth), r.o.Forms
	switch {
	case g.KernelWeight != nil:
		lot.KernelWeight = g.KernelWeight.SI
	case g.Raw(): // what has grown drinks no more
		r.assume(KernelWeight{profile.KernelWeight, profile.Name})
	}
	share, ok := germination(g)
	switch {
	case ok:
		lot.Germination = share
	case g.Raw():
		r.assume(Germination{grain.DefaultGermination})
	}
	return lot, x, nil
}

// GreenRoom is the room, m³, that the charge of a process takes as green malt, usually grown
// and moist, where there is no forecast. It is false where the species is not known.
func GreenRoom(p *model.Process) (float64, bool) {
	if p.Charge == nil || p.Grain == nil {
		return 0, false
	}
	profile, err := grain.Of(p.Grain.Species.Text)
	if err != nil {
		return 0, false
	}
	first := UsualMoisture / (1 - UsualMoisture)
	lot := grain.LotOf(profile, p.Charge.SI*(1-MoistureOf(p.Grain)), first)
	return lot.BedVolume(UsualGreen/(1-UsualGreen), profile.GrownTo(usualGrowth)), true
}

// lotMoisture is what the lot holds as it comes, wet basis.
func (r *run) lotMoisture() float64 {
	g := r.p.Grain
	if g.Moisture != nil {
		return g.Moisture.SI
	}
	w := MoistureOf(g)
	r.assume(GrainMoisture{w, g.Grown(), g.Kilned()})
	return w
}

// MoistureOf is what is taken for a lot that does not say its moisture, wet basis.
func MoistureOf(g *model.Grain) float64 {
	switch {
	case g.Grown():
		return UsualGreen
	case g.Kilned():
		return UsualKilned
	}
	return UsualMoisture
}

// UsualGreen is the moisture of green malt that does not say it, wet basis (common
// practice: 42 to 46 % when it goes to the kiln).
const UsualGreen = 0.44

// UsualKilned is that of malt that was dried before, wet basis (common practice: 3 to 5 % as it is sold).
const UsualKilned = 0.04

// UsualMoisture is that of grain in store, wet basis (common practice). It is taken
// where a lot does not say.
const UsualMoisture = 0.12

// germination is the best of the lot's tests: in little water nothing drowns.
func germination(g *model.Grain) (float64, bool) {
	best := 0.0
	for _, t := range g.Germination {
		best = max(best, t.Share.SI)
	}
	return best, best > 0
}

// lies is the room that the batch takes at so much moisture, kg for each kg of dry matter, m³:
// malt that was bought is as loose as what has grown.
func (r *run) lies(x float64) float64 {
	clock := r.batch.Clock
	if r.p.Grain.Kilned() {
		clock = r.batch.Lot.Profile.GrownTo(usualGrowth)
	}
	return r.batch.Lot.BedVolume(x, clock)
}
