package profile

import "maltwright/lang/vocabulary"

// Roasted malt is roasted in a drum until it is coloured through; no enzymes are left in it
// (common practice). How dark it gets at these temperatures no forecast tells.
var roastedMalt = Malt{
	Name:     vocabulary.MaltRoasted,
	Cast:     Band{0.42, 0.46},
	EndMost:  0.05,
	EndLeast: 0.003,
	Cure:     Band{150, 250},
	Colour:   Band{150, 1700},
	Least:    Least{Heat: 140, ElsePale: true},
}
