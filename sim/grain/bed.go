package grain

const (
	// swelling: a bed steeped to swollenX fills this much of its dry bulk
	// volume; handbook, from memory [kunze].
	swelling = 1.4
	// swollenX, kg/kg: the moisture of 45 %, at which swelling holds.
	swollenX = 0.45 / 0.55
	// rootSwelling: a bed with full acrospires and their rootlets against one
	// just cast; common practice, a tonne of barley makes some 2.3 m³ of green
	// malt.
	rootSwelling = 1.15
)

// pouredVolume is the bulk volume of the raw grain, m³.
func (l *Lot) pouredVolume() float64 {
	return l.DryMass * (1 + l.Moisture0) / l.Profile.BulkDensity
}

// BedVolume is the room the drained bed takes, m³, at the moisture x, kg/kg dry
// basis, and the growth clock, °C·h: the poured volume of the raw grain times 1
// + 0.4·(X − X0)/(X45 − X0), X45 the moisture of 45 %, and times 1 + 0.15·(mean
// acrospire), up to a full one, for the rootlets.
func (l *Lot) BedVolume(x, clock float64) float64 {
	swollen := 1 + (swelling-1)*(x-l.Moisture0)/(swollenX-l.Moisture0)
	roots := 1 + (rootSwelling-1)*min(1, l.Profile.Acrospire(clock))
	return l.pouredVolume() * swollen * roots
}

// SwollenVolume is the bed volume of the lot at 45 %, before it grows, m³.
func (l *Lot) SwollenVolume() float64 { return l.pouredVolume() * swelling }
