package profile

// Munich malt grows wet and warm, and may be stewed at 40 to 50 °C while it is wet.
var munich = Malt{
	Name:         "munich",
	Cast:         Band{0.45, 0.48},
	EndMost:      0.045,
	EndLeast:     0.015,
	Cure:         Band{80, 105},
	Colour:       Band{14, 25},
	WarmBy:       5,
	NeedsEnzymes: true,
	Stewed:       true,
}
