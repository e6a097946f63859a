package germinate

import (
	"maltwright/sim/drying"
	"maltwright/sim/grain"
)

// solid is what the bed is made of, with the figures that every step asks for.
// It never changes, so that copies of a piece share it.
type solid struct {
	drying.Material

	kernels  grain.Kernels
	steepest float64 // of its sorption, see [drying.Sorption]
	packing  drying.Packing
}

func newSolid(m drying.Material) *solid {
	s := solid{Material: m, kernels: grain.KernelsOf(m), packing: m.Packing()}
	_, s.steepest = m.Wet()
	return &s
}
