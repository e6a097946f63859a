package grain

const (
	// swelling: a bed steeped to swollenX fills this much of its dry bulk
	// volume; handbook, from memory [kunze].
	swelling = 1.4
	// swollenX, kg/kg: the moisture of 45 %, at which swelling holds.
	swollenX = 0.45 / 0.55
	// looseSwelling: kernels with full acrospires against the same before they
	// grew, as dry as they may be: what has been modified shrinks no further
	// (calibrated to the quarter, a measure of volume that weighed 448 lb of barley
	// and 336 lb of malt: common practice).
	looseSwelling = 1.15
	// greenSwelling: the same bed while its rootlets stand, which hold it apart
	// (calibrated to beds of 0.5 to 0.6 m that grow to 0.8 to 0.9 m, 1.3 to
	// 1.8, and to 400 to 550 kg/m³ of green malt: common practice).
	greenSwelling = 1.5
)

// pouredVolume is the bulk volume of the raw grain, m³.
func (l *Lot) pouredVolume() float64 {
	return l.DryMass * (1 + l.Moisture0) / l.Profile.BulkDensity
}

// BedVolume is the room the drained bed takes, m³, at the moisture x, kg/kg dry
// basis, and the growth clock, °C·h, in a steeping vessel, on a floor, in a box and on a
// kiln alike: the poured volume of the raw grain times 1 + 0.4·(X − X0)/(X45 − X0), X45
// the moisture of 45 %, which is the volume of its water; and times 1 + (0.15 + 0.35·s)·a, a
// the mean acrospire up to a full one, s = X/X45, up to 1, how far the rootlets stand: they
// wither as they dry.
func (l *Lot) BedVolume(x, clock float64) float64 {
	swollen := 1 + (swelling-1)*(x-l.Moisture0)/(swollenX-l.Moisture0)
	stands := min(1, x/swollenX)
	grown := 1 + (looseSwelling-1+(greenSwelling-looseSwelling)*stands)*min(1, l.Profile.Acrospire(clock))
	return l.pouredVolume() * swollen * grown
}

// BedVolume is the room that the batch takes, m³, as it lies; see [Lot.BedVolume].
func (b *Batch) BedVolume() float64 { return b.Lot.BedVolume(b.X(), b.Clock) }

// SwollenVolume is the bed volume of the lot at 45 %, before it grows, m³.
func (l *Lot) SwollenVolume() float64 { return l.pouredVolume() * swelling }
