package profile

// Vienna malt stands between pale and Munich malt.
var vienna = Malt{
	Name:         "vienna",
	Cast:         Band{0.44, 0.45},
	EndMost:      0.045,
	EndLeast:     0.015,
	Cure:         Band{90, 95},
	Colour:       Band{6, 9},
	NeedsEnzymes: true,
}
