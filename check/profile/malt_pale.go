package profile

// Pale malt is cured somewhat warmer than pilsner malt.
var pale = Malt{
	Name:         "pale",
	Cast:         Band{0.42, 0.46},
	EndMost:      0.05,
	EndLeast:     0.015,
	Cure:         Band{80, 95},
	Colour:       Band{3.5, 7},
	NeedsEnzymes: true,
	Pale:         true,
}
