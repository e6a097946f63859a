package model

import "maltwright/lang/vocabulary"

// Still tells whether a kiln is an oven without a fan, in which there is one air about the
// malt and none before and behind it.
func (k *Kiln) Still() bool {
	return k != nil && k.Draught.Text == vocabulary.DraughtStill
}

// InStillOven tells whether a stage is one in an oven without a fan.
func InStillOven(st Stage) bool {
	on, ok := st.(*Kilning)
	return ok && on.Kiln.Still()
}
