package grain

// GrownTo gives the growth clock, °C·h, at which the mean acrospire is so long, a share of
// the kernel from 0 to 1: the inverse of [Profile.Acrospire].
func (p *Profile) GrownTo(acrospire float64) float64 {
	at, before := acrospire*float64(len(p.Marks)), 0.0
	for k, mark := range p.Marks {
		if at <= float64(k+1) {
			return p.Chit + before + (at-float64(k))*(mark-before)
		}
		before = mark
	}
	return p.Chit + before
}

// Kilned returns a lot as malt without rootlets that holds x kg of water for each kg of dry
// matter: nothing in it grows any more. It returns the errors of [Batch.Check].
func Kilned(l Lot, x float64) (Batch, error) {
	b := Batch{Lot: l, Dry: l.DryMass, Water: l.DryMass * x}
	if err := b.Check(); err != nil {
		return Batch{}, err
	}
	return b, nil
}

// Grown returns a lot as green malt that holds x kg of water for each kg of dry matter: its
// acrospires so long, and every kernel that germinates has chitted. What it lost by growing
// it lost before: the dry matter of the lot is that of the green malt. It returns the errors
// of [Batch.Check].
func Grown(l Lot, x, acrospire float64) (Batch, error) {
	b := Batch{Lot: l, Dry: l.DryMass, Water: l.DryMass * x, Clock: l.Profile.GrownTo(acrospire), Chitted: l.Germination}
	if err := b.Check(); err != nil {
		return Batch{}, err
	}
	return b, nil
}
