package pneumatic

import (
	"math"

	"maltwright/sim/air"
	"maltwright/sim/grain"
)

// upper is the grain at the open face, as the piece on a floor has it: the upper 2 kg of
// dry matter on the m², or all there is where that is less.
type upper struct {
	x     float64             // its moisture, kg/kg dry basis
	gives [MostLayers]float64 // share of what leaves by the face that comes out of a layer
	comes [MostLayers]float64 // kg/s that come up to a layer, below nil what it sends
}

// upper gathers it. What it is short of against the mean of the bed is made good from what
// lies below, within [grain.SupplyTime]. A face that is wetter than the bed sends nothing down.
func (s *stage) upper() upper {
	var u upper
	var in [MostLayers]float64 // share of a layer that lies in it
	n := s.b.count
	left := s.b.packing.Exposed * s.b.vessel.Area
	var dry, water, allDry, allWater float64
	for i := n - 1; i >= 0; i-- {
		m := &s.at[i]
		in[i] = math.Min(1, left/m.dry)
		left -= in[i] * m.dry
		dry += in[i] * m.dry
		water += in[i] * m.dry * m.x
		allDry += m.dry
		allWater += m.dry * m.x
	}
	u.x = water / dry
	rise, below := (allWater/allDry*dry-water)/grain.SupplyTime, allWater-water
	for i := range n {
		m := &s.at[i]
		if water > 0 {
			u.gives[i] = in[i] * m.dry * m.x / water
		}
		if rise > 0 && below > 0 {
			u.comes[i] = rise * (in[i]*m.dry/dry - (1-in[i])*m.dry*m.x/below)
		}
	}
	return u
}

// seep moves the water that comes up, and takes what leaves by the face, kg/s, out of the
// layers. The water has the warmth of the uppermost, whose heat the face takes.
func (s *stage) seep(own []rate, u *upper, leaves float64) {
	top := len(own) - 1
	warm := air.WaterHeat * s.at[top].t
	for i := range own {
		water := u.comes[i] - u.gives[i]*leaves
		own[i].water += water
		own[i].heat += warm * water
	}
	own[top].heat += warm * leaves
}
