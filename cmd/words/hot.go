package words

import (
	"fmt"

	"maltwright/cmd/answer/outlook"
)

// HotBed says what a bed that is too warm comes to, and what to do now.
func (h House) HotBed(b outlook.HotBed) string {
	limit := fmt.Sprintf("above %s the grain grows unevenly and goes mouldy, above %s the piece is lost", h.Shown(b.Warm), h.Shown(b.Lost))
	if b.Read > b.Lost {
		limit = fmt.Sprintf("above %s the grain dies", h.Shown(b.Lost))
	}
	return fmt.Sprintf("the bed is too warm at %s: %s; turn it now, spread it thinner, and cool it", h.Shown(b.Read), limit)
}
