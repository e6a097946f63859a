package profile

// Brown malt is amber malt that is roasted on, at up to 175 °C, until the cut kernel is full buff (home practice); no enzymes are expected of it.
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
