package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/timetable"
	"maltwright/lang/model"
	"maltwright/sim/visits"
)

// What is waited for stands with the times before which and beyond which it is not.
func TestATaskSaysTheTimesOfItsCondition(t *testing.T) {
	fifty := &answer.Temperature{Place: "air-on", From: 50, To: 50}
	dry := timetable.Sentence{Kind: visits.Heat, Stage: model.KilnStage, Name: "dry 1", Temperature: fifty, Until: "moisture at most 25 %"}
	for _, c := range []struct {
		earliest, latest answer.Seconds
		want             string
	}{
		{0, 0, "dry 1 at air-on 50 °C until moisture at most 25 %"},
		{6 * 3600, 14 * 3600, "dry 1 at air-on 50 °C for at least 6 h, then until moisture at most 25 %, but no longer than 14 h"},
		{0, 1800, "dry 1 at air-on 50 °C until moisture at most 25 %, but no longer than 30 min"},
		{5400, 0, "dry 1 at air-on 50 °C for at least 1 h 30 min, then until moisture at most 25 %"},
	} {
		dry.Earliest, dry.Latest = c.earliest, c.latest
		assert.Equal(t, c.want, House{}.task(dry))
	}
	wither := timetable.Sentence{Kind: visits.Spread, Stage: model.WitherStage, Where: "floor", Until: "moisture at most 35 %", Earliest: 12 * 3600, Latest: 36 * 3600}
	assert.Equal(t, `spread on "floor" to wither; for at least 12 h, then until moisture at most 35 %, but no longer than 1 d 12 h`, House{}.task(wither))
}
