package words

import (
	"fmt"
	"math"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
)

// Short says that grain comes out of the steep too dry, and what can be done.
func Short(s outlook.Short) string {
	asks := "the " + s.Text + " that the steep aims at"
	if s.Waits {
		asks = "what the steep waits for, " + s.Text
	}
	return fmt.Sprintf("%s is under %s: soak once more, or go on; it then grows more slowly and less evenly", Percent(s.Moisture), asks)
}

// Apart says that a moisture lies far from its forecast, so much above it.
func Apart(above answer.Share) string {
	side := "above"
	if above < 0 {
		side = "under"
	}
	return fmt.Sprintf("that is %.1f points %s the forecast: weigh once more, and look at the times and the water of the soaks", 100*math.Abs(float64(above)), side)
}
