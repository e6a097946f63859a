package grain

import "math"

const (
	// poreDiffusion, m²/s, is that of oxygen through the pores of a bed:
	// 2.0e-5 in free air (handbook, from memory) times the voids of 0.40 to the
	// power 1.5 (handbook, from memory: Bruggeman's law).
	poreDiffusion = 2.0e-5 * 0.2530
	// AirOxygen is the density of oxygen in air, kg/m³: published, 23.1 % of the
	// mass of air of 1.23 kg/m³ at 15 °C.
	AirOxygen = 0.284
)

// OxygenReach is the depth, m, to which oxygen comes by diffusion from an open
// face into a bed that stands and takes demand kg/(m³ s) of it, the same at every
// depth: √(2·D·ρ/demand), D the diffusion through the pores, ρ the oxygen in the
// air. Nothing taken is reached at any depth.
func OxygenReach(demand float64) float64 {
	return math.Sqrt(2 * PoreSupply / demand)
}

// PoreSupply is D·ρ, kg/(m s): ∫ z·demand dz down to the depth that oxygen reaches.
const PoreSupply = poreDiffusion * AirOxygen

// PoreOxygen is the oxygen in the pores of a bed that was aired, kg/m³: of air in
// voids of 0.40 (handbook, from memory).
const PoreOxygen = 0.40 * AirOxygen

// OxygenDemand is the oxygen, kg/(m³ s), that a batch takes at t °C where it has
// all that it wants, spread over the room it fills.
func OxygenDemand(b *Batch, t float64) float64 {
	burn := b.Lot.DryMass * b.Lot.RespirationSpeed(b.Clock, t, b.Moisture(), 1-b.Debt)
	return StarchO2 * burn / b.BedVolume()
}

// StillAccess is the access of a bed that stands, 0 to 1: the share of its kernels
// that the oxygen reaches by diffusion from its open faces, each of which serves
// depth m of it, where the bed would take demand kg/(m³ s) if it had all that it
// wants. Those it does not reach neither burn nor grow.
func StillAccess(demand, depth float64) float64 {
	if reach := OxygenReach(demand); reach < depth {
		return reach / depth
	}
	return 1
}
