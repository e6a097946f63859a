package profile

// Vienna malt stands between pale and Munich malt.
// What is cured below 85 °C stays as pale as pale malt (common practice).
var vienna = Malt{
	Name:         "vienna",
	Cast:         Band{0.44, 0.45},
	EndMost:      0.045,
	EndLeast:     0.015,
	Cure:         Band{90, 95},
	Colour:       Band{6, 9},
	NeedsEnzymes: true,
	Least:        Least{Heat: 85, Enzymes: 0.15},
}
