package profile

import "maltwright/lang/vocabulary"

// Chocolate malt is roasted in a drum until it is coloured through; no enzymes are left in it
// (common practice: 400 to 1300 EBC as it is sold, at 200 °C and more for an hour). How dark it gets at these temperatures no forecast tells.
var chocolate = Malt{
	Name:     vocabulary.MaltChocolate,
	Cast:     Band{0.42, 0.46},
	EndMost:  0.05,
	EndLeast: 0.003,
	Cure:     Band{195, 240},
	Colour:   Band{400, 1300},
	Least:    Least{Heat: 180, ElsePale: true},
}
