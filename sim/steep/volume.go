package steep

const (
	// swelling: a bed steeped to swollenX fills this much of its dry bulk
	// volume; handbook, from memory [kunze].
	swelling = 1.4
	// swollenX, kg/kg: the moisture of 45 %, at which swelling holds.
	swollenX = 0.45 / 0.55
	// cornDensity, kg/m³: of the raw corn itself, for the water it displaces;
	// common practice.
	cornDensity = 1280.0
)

// BedVolume is the room the drained bed takes, m³: the volume of the dry poured
// grain times 1 + 0.4·(X − X0)/(X45 − X0), X45 the moisture of 45 %.
func (s *State) BedVolume() float64 {
	x0 := s.lot.Moisture0
	return s.poured() * (1 + (swelling-1)*(s.X()-x0)/(swollenX-x0))
}

// poured is the volume of the raw grain, m³.
func (s *State) poured() float64 {
	return s.lot.DryMass * (1 + s.lot.Moisture0) / s.lot.Profile.BulkDensity
}

// FillVolume is the room grain and water take when perKg litres of water are
// drawn for each kg of grain as received, m³: the corns' own volume and the
// water, or the bed when that stands higher. It is what a vessel must hold.
func (s *State) FillVolume(perKg float64) float64 {
	mass := s.lot.DryMass * (1 + s.lot.Moisture0)
	fill := mass/cornDensity + mass*perKg*litre
	return max(fill, s.BedVolume())
}

const litre = 1e-3 // m³
