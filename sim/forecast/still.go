package forecast

import (
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

// Still tells whether a kiln is an oven without a fan, in which there is one air about the
// malt and none before and behind it. A kiln of which nothing is said is none.
func Still(k *model.Kiln) bool { return k != nil && k.Draught.Text == vocabulary.DraughtStill }

// InStillOven tells whether a stage is one in an oven without a fan.
func InStillOven(st model.Stage) bool {
	on, ok := st.(*model.Kilning)
	return ok && Still(on.Kiln)
}
