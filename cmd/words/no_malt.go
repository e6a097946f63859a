package words

import (
	"fmt"

	"maltwright/cmd/answer/outlook"
)

// NoMalt says why nothing is told of malt that comes off the kiln wet; green is a batch of bought
// malt, which may have no rootlets.
func NoMalt(n outlook.NoMalt, green bool) string {
	rootlets := ", and its rootlets stay on"
	if green {
		rootlets = ""
	}
	return fmt.Sprintf("the grain comes off the kiln at %.1f %% moisture: above %.0f %% it sours and moulds within days%s; go on drying it at once, or throw it away",
		100*n.Moisture, 100*n.Most, rootlets)
}
