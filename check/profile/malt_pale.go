package profile

// Pale malt is cured somewhat warmer than pilsner malt. A cure of 3 h at 80 °C, the
// mildest in small-scale practice, is half a half-life of the DMS precursor; 5.5 h at
// 84 °C and 3 h at 90 °C are one and a half (published process of a maltings).
// Below 70 °C malt is dried and not cured (common practice).
var pale = Malt{
	Name:         "pale",
	Cast:         Band{0.42, 0.46},
	EndMost:      0.05,
	EndLeast:     0.015,
	Cure:         Band{80, 95},
	Colour:       Band{3.5, 7},
	NeedsEnzymes: true,
	Pale:         true,
	Split:        0.5,
	Least:        Least{Heat: 70},
}
