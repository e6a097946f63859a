package profile

// Pilsner malt is the palest; its cure drives the DMS precursor off and no colour in.
// Below 70 °C malt is dried and not cured (common practice).
var pilsner = Malt{
	Name:         "pilsner",
	Cast:         Band{0.42, 0.44},
	EndMost:      0.045,
	EndLeast:     0.015,
	Cure:         Band{80, 85},
	Colour:       Band{2.5, 3},
	NeedsEnzymes: true,
	Pale:         true,
	Split:        0.5,
	Least:        Least{Heat: 70},
}
