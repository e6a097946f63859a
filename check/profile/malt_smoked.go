package profile

import "maltwright/lang/vocabulary"

// Smoked malt is a pale malt with smoke through it.
// Below 70 °C malt is dried and not cured (common practice).
var smoked = Malt{
	Name:         "smoked",
	Cast:         Band{0.42, 0.46},
	EndMost:      0.05,
	EndLeast:     0.015,
	Cure:         Band{75, 95},
	Colour:       Band{3, 12},
	NeedsEnzymes: true,
	Over:         []string{vocabulary.FiredWood, vocabulary.FiredPeat},
	Least:        Least{Heat: 70, Smoked: true},
}
