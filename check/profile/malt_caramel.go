package profile

// Caramel malt is stewed wet at 60 to 75 °C on purpose, then dried and coloured at 80 to 140 °C, dark ones at up to 180:
// finished malt that is soaked to about 50 %, kept at 68 to 73 °C for 90 min and roasted at 107 °C for 2 h is some 50 EBC,
// and at 177 °C darker (home practice).
// At 55 °C and less it is not sugar inside within hours, for the starch of barley swells
// from about 60 °C on (common practice).
var caramel = Malt{
	Name:     "caramel",
	Cast:     Band{0.43, 0.48},
	EndMost:  0.08,
	EndLeast: 0.02,
	Cure:     Band{80, 180},
	Colour:   Band{20, 300},
	WarmBy:   5,
	Stewed:   true,
	Least:    Least{Heat: 78, Stew: 55, Colour: 6.6, ElsePale: true},
}
