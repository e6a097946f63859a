package steep

const (
	// kernelDensity, kg/m³: of the raw kernel itself, for the water it displaces;
	// common practice.
	kernelDensity = 1280.0

	litre = 1e-3 // m³
)

// BedVolume is the room the drained bed takes, m³; see [grain.Lot.BedVolume].
func (s *State) BedVolume() float64 { return s.lot.BedVolume(s.X(), s.clock) }

// own is the room of the kernels themselves when they had drunk so much water, kg/kg of first
// dry matter, m³.
func (s *State) own(drunk float64) float64 {
	return s.lot.DryMass * ((1+s.first)/kernelDensity + drunk*litre)
}

// PourVolume is the room of grain and water, m³, when perKg litres are poured for each kg of
// grain as received.
func (s *State) PourVolume(perKg float64) float64 {
	return max(s.own(s.water.sum())+s.received()*perKg*litre, s.BedVolume())
}

// Covers is the least water, m³, that covers the bed as it lies now, had it been poured when
// this soak began: what the kernels drink of it, they swell by.
func (s *State) Covers() float64 {
	drunk := s.water.sum()
	if s.submerged {
		drunk = s.before
	}
	return s.BedVolume() - s.own(drunk)
}

// FillVolume is the room grain and water take when perKg litres of water are
// drawn for each kg of grain as received, m³: the kernels' own volume and the
// water, or the bed when that stands higher. It is what a vessel must hold.
func (s *State) FillVolume(perKg float64) float64 {
	mass := s.lot.DryMass * (1 + s.lot.Moisture0)
	fill := mass/kernelDensity + mass*perKg*litre
	return max(fill, s.BedVolume())
}
