package grain

import (
	"errors"

	"maltwright/sim/air"
)

// Batch is a lot of grain as it goes from stage to stage. Masses in kg. At all
// times Lot.DryMass = Dry + Leached + Respired.
type Batch struct {
	Lot      Lot
	Dry      float64 // dry matter left
	Water    float64 // water in and on the kernels
	Leached  float64 // dry matter washed out in the steep
	Respired float64 // dry matter burnt in growing
	Clock    float64 // growth clock, °C·h above the base temperature
	Chitted  float64 // share of all kernels that show a chit
	Debt     float64 // share by which it grows and breathes less, for want of oxygen before; see [Lot.DebtRate]
}

// NewBatch returns the raw grain of a lot. It returns the errors of [Lot.Check].
func NewBatch(l Lot) (Batch, error) {
	if err := l.Check(); err != nil {
		return Batch{}, err
	}
	return Batch{Lot: l, Dry: l.DryMass, Water: l.DryMass * l.Moisture0}, nil
}

// Check refuses a batch with a broken lot or with masses that cannot be.
func (b *Batch) Check() error {
	return errors.Join(b.Lot.Check(),
		air.Within("dry matter left", b.Dry, "kg", b.Lot.DryMass/2, b.Lot.DryMass),
		air.Within("water in the grain", b.Water, "kg", 0, maxDry*b.Dry),
		air.Within("growth clock", b.Clock, "°C·h", 0, 1e6),
		air.Within("chitted kernels", b.Chitted, "of kernels", 0, 1),
		air.Within("debt of oxygen", b.Debt, air.Share, 0, 1))
}

// Mass is the weight on the scale, kg: dry matter and water.
func (b *Batch) Mass() float64 { return b.Dry + b.Water }

// X is the moisture, kg of water per kg of dry matter left.
func (b *Batch) X() float64 { return b.Water / b.Dry }

// Moisture is the moisture on the wet basis, kg of water per kg of malt.
func (b *Batch) Moisture() float64 { return b.Water / b.Mass() }

// Acrospire is the mean acrospire, a share of the kernel; see
// [Profile.Acrospire].
func (b *Batch) Acrospire() float64 { return b.Lot.Profile.Acrospire(b.Clock) }

// Classes is the share of kernels in each acrospire class; see [Profile.Classes].
func (b *Batch) Classes() AcrospireClasses { return b.Lot.Profile.Classes(b.Clock, b.Chitted) }

// Modification is the modification index; see [Profile.Modification].
func (b *Batch) Modification() float64 { return b.Lot.Profile.Modification(b.Clock) }

// Rootlets is the dry matter in rootlets, kg, of the kernels that live; see [Profile.Rootlets].
func (b *Batch) Rootlets() float64 {
	return b.Lot.DryMass * (1 - b.Lot.Drowned) * b.Lot.Profile.Rootlets(b.Clock)
}

// CO2 is the carbon dioxide given off so far, kg.
func (b *Batch) CO2() float64 { return StarchCO2 * b.Respired }
