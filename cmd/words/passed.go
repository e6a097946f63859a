package words

import (
	"fmt"
	"math"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
)

// Passed says that a steep needs no further soak.
func (h House) Passed(p outlook.Passed) string {
	lies := "is above"
	if p.Moisture <= p.To {
		lies = "is in"
	}
	comes := answer.Share(math.Round(100*float64(p.Comes)) / 100)
	return fmt.Sprintf("%s %s the %s that the steep aims at: leave %s out, or about %s comes of it", Percent(p.Moisture), lies, p.Aim, strings.Join(p.Soaks, " and "), Part(comes))
}
