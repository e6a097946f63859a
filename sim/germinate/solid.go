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

// waterActivity gives the relative humidity in balance with the open face of
// the bed, 0 to 1, at the moisture x, kg/kg dry basis, and t °C: the material's
// sorption curve. That of barley is fitted up to some 20 % wet basis; above
// 25 % it is within 0.005 of one, as a wet surface has it.
func (s *solid) waterActivity(x, t float64) float64 {
	if x >= s.wetFrom {
		return 1
	}
	rh, _, _ := s.Humidity(x, t)
	return rh
}
