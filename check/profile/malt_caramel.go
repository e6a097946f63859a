package profile

// Caramel malt is stewed wet at 60 to 75 °C on purpose, then dried and coloured at 80 to 140 °C.
var caramel = Malt{
	Name:     "caramel",
	Cast:     Band{0.43, 0.48},
	EndMost:  0.08,
	EndLeast: 0.02,
	Cure:     Band{80, 140},
	Colour:   Band{20, 300},
	WarmBy:   5,
	Stewed:   true,
}
