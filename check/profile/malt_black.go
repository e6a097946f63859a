package profile

import "maltwright/lang/vocabulary"

// Black malt is roasted in a drum until it is coloured through; no enzymes are left in it
// (200 to 230 °C in a drum and quenched with water, from memory; 1100 to 1700 EBC as it is sold, common practice). How dark it gets at these temperatures no forecast tells.
var black = Malt{
	Name:     vocabulary.MaltBlack,
	Cast:     Band{0.42, 0.46},
	EndMost:  0.05,
	EndLeast: 0.003,
	Cure:     Band{200, 250},
	Colour:   Band{1100, 1700},
	Least:    Least{Heat: 190, ElsePale: true},
}
