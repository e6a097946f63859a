package profile

import "maltwright/lang/vocabulary"

// Distilling malt keeps every enzyme: it is dried cool and not cured, some of it in the smoke of peat (common practice).
var distilling = Malt{
	Name:         "distilling",
	Cast:         Band{0.44, 0.48},
	EndMost:      0.08,
	EndLeast:     0.015,
	Cure:         Band{40, 65},
	Colour:       Band{2, 3},
	Acrospire:    Band{0.5, 1.5}, // long malt, for enzymes
	NeedsEnzymes: true,
	Over:         []string{vocabulary.FiredPeat},
}
