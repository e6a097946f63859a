package profile

// Acid malt is a pale malt that was soured.
// Its cure begins at 60 °C, somewhat below that of other pale malts (common practice).
var acid = Malt{
	Name:         "acid",
	Cast:         Band{0.42, 0.46},
	EndMost:      0.05,
	EndLeast:     0.015,
	Cure:         Band{60, 85},
	Colour:       Band{3, 7},
	NeedsEnzymes: true,
	Least:        Least{Heat: 57, Soured: true},
}
