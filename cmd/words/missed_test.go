package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/visits"
)

func TestWhatIsGivenUpIsSaid(t *testing.T) {
	for _, k := range []visits.Kind{visits.Look, visits.Gate, visits.EndFloor} {
		do := timetable.Sentence{Kind: k, Stage: model.GerminateStage, Until: "moisture at most 8 %"}
		const even = "its latest time, and the forecast does not expect it met by then"
		assert.NotContains(t, words.House{}.Say(do), even, k)
		do.Missed = true
		assert.Contains(t, words.House{}.Say(do), even, k)
	}
}
