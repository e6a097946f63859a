package text

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
)

// Of a step that not every forecast has it is said which it is, and of how many.
func TestStepsThatNotEveryForecastHasAreTold(t *testing.T) {
	step := func(label string, number int, hours, share float64) outlook.StepSpread {
		end := answer.Seconds(3600 * hours)
		return outlook.StepSpread{Stage: "kiln", Label: label, StepName: outlook.StepName{Kind: label, Number: number}, End: answer.Spread[answer.Seconds]{P10: end, P50: end, P90: end, Share: answer.Share(share)}}
	}
	said := func(steps ...outlook.StepSpread) string {
		s := &Sheet{}
		s.spread(&outlook.Spread{Members: 100, Steps: steps})
		for line := range strings.Lines(s.String()) {
			assert.LessOrEqual(t, len([]rune(line)), usualWidth+1, line)
		}
		return strings.Join(strings.Fields(s.String()), " ")
	}
	assert.NotContains(t, said(step("dry", 1, 10, 1), step("cure", 1, 14, 1)), "there is")
	assert.Contains(t, said(step("dry 1", 1, 10, 1), step("wait", 0, 12, 0.94), step("cure", 1, 14, 1)),
		"there is a wait behind dry 1 in 94 % of the forecasts; its row shows those")
	assert.Contains(t, said(step("soak 3", 3, 10, 0.4)), "there is soak 3 in 40 % of the forecasts")
}
