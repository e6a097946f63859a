package profile

import "maltwright/lang/vocabulary"

// Green malt has grown and is not dried: it is steeped and grown as pale malt is, and none of
// it is cured.
var green = Malt{
	Name:         vocabulary.MaltGreen,
	Cast:         Band{0.42, 0.46},
	EndMost:      0.55,
	EndLeast:     0.3,
	NeedsEnzymes: true,
}
