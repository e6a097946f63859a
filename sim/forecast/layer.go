package forecast

import (
	"math"

	"maltwright/sim/kiln"
)

// Layer is a slice of a bed that air goes through.
type Layer struct {
	Depth    float64 // m, of its middle above where the air comes on: the plate
	Thick    float64 // m
	Moisture float64 // wet basis, 0 to 1
	Malt     float64 // °C of the grain or malt
	Air      float64 // °C of the air in its middle; NaN of a growing bed
}

// layered is a model that has layers to be seen.
type layered interface{ seeLayers() []Layer }

// seeLayers are those of the kiln's bed. What is no longer forecast of them is not a number.
func (m *kilnModel) seeLayers() []Layer {
	bed := m.aired()
	air, malt := bed.LayersAt(nil), m.bed.LayersAt(nil)
	out, below := make([]Layer, len(malt)), 0.0
	for i, l := range malt {
		out[i] = Layer{below + l.Thick/2, l.Thick, m.forecast(wetBasis(l.X)), m.forecast(l.T), m.forecast((air[i].In + air[i].Off) / 2)}
		below += l.Thick
	}
	return out
}

// aired is the bed with air in it: where none has passed yet, as it is a moment later.
func (m *kilnModel) aired() *kiln.Bed {
	if !m.bed.Unblown() {
		return m.bed
	}
	try := m.copy(nil).(*kilnModel)
	if err := try.advance(momentWidth); err != nil {
		return m.bed
	}
	return try.bed
}

// seeLayers are those of a growing bed, all taken to be as thick. The air in them is not kept.
func (m *boxModel) seeLayers() []Layer {
	layers := m.bed.Layers(nil)
	thick := m.bed.Depth() / float64(len(layers))
	out := make([]Layer, len(layers))
	for i, l := range layers {
		out[i] = Layer{(float64(i) + 0.5) * thick, thick, l.Moisture, l.T, math.NaN()}
	}
	return out
}
