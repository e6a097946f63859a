package germinate

import "maltwright/sim/drying"

// solid is what the bed is made of, with the figures that every step asks for.
// It never changes, so that copies of a piece share it.
type solid struct {
	drying.Material

	wetFrom, steepest float64 // of its sorption, see [drying.Sorption]
	packing           drying.Packing
}

func newSolid(m drying.Material) *solid {
	s := solid{Material: m, packing: m.Packing()}
	s.wetFrom, s.steepest = m.Wet()
	return &s
}
