package text

import (
	"fmt"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
)

// below tells of each floor of a kiln what it took from the floor below.
func (s *Sheet) below(r outlook.Result) {
	for _, st := range r.Stages {
		b := st.Below
		if b == nil {
			continue
		}
		waits := ""
		if b.Waited > 0 {
			waits = fmt.Sprintf(", after %s of waiting for the floor below", words.Lasting(b.Waited))
		}
		s.para("floors", "the air of %s is the exhaust of %s, at %.0f to %s: %s of heat that no heater has to give; a batch goes down every %s%s",
			st.Called(), words.Safe(b.Kiln), s.Temperature(float64(b.Coolest)), s.Degrees(float64(b.Warmest), 0), words.Heat(b.Heat), words.Lasting(b.Cycle), waits)
	}
}
