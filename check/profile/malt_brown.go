package profile

// Brown malt is roasted hotter than amber malt; no enzymes are expected of it.
// It is coloured by roasting, hotter and longer than amber malt (common practice).
var brown = Malt{
	Name:     "brown",
	Cast:     Band{0.42, 0.46},
	EndMost:  0.04,
	EndLeast: 0.01,
	Cure:     Band{95, 180},
	Colour:   Band{90, 185},
	Least:    Least{Heat: 105, Colour: 22, ElsePale: true},
}
