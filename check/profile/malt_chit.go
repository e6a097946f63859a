package profile

// Chit malt hardly grows: one to four days.
var chit = Malt{
	Name:         "chit",
	Cast:         Band{0.35, 0.42},
	EndMost:      0.07,
	EndLeast:     0.015,
	Cure:         Band{40, 80},
	Colour:       Band{2, 4},
	Acrospire:    Band{0, 0.5},
	Days:         Band{1, 4},
	NeedsEnzymes: true,
}
