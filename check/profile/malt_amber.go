package profile

// Amber malt is roasted dry; no enzymes are expected of it.
var amber = Malt{
	Name:     "amber",
	Cast:     Band{0.42, 0.46},
	EndMost:  0.04,
	EndLeast: 0.01,
	Cure:     Band{95, 150},
	Colour:   Band{40, 90},
}
