package steep

const (
	// cornDensity, kg/m³: of the raw corn itself, for the water it displaces;
	// common practice.
	cornDensity = 1280.0

	litre = 1e-3 // m³
)

// BedVolume is the room the drained bed takes, m³; see [grain.Lot.BedVolume].
func (s *State) BedVolume() float64 { return s.lot.BedVolume(s.X(), s.clock) }

// FillVolume is the room grain and water take when perKg litres of water are
// drawn for each kg of grain as received, m³: the corns' own volume and the
// water, or the bed when that stands higher. It is what a vessel must hold.
func (s *State) FillVolume(perKg float64) float64 {
	mass := s.lot.DryMass * (1 + s.lot.Moisture0)
	fill := mass/cornDensity + mass*perKg*litre
	return max(fill, s.BedVolume())
}
