package profile

// Munich malt grows wet and warm, and may be stewed at 40 to 50 °C while it is wet.
// One published schedule lets it lie wet at 40 °C for hours, and cures it at 80 to 85 °C;
// without that it is cured at 90 °C and above (common practice). An ale kiln to 95 °C
// leaves 0.3 to 0.6 of the diastatic power, so 0.15 is plainly too little.
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
	Least:        Least{Heat: 75, Unstewed: 90, Enzymes: 0.15},
}
