package read

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/source/golden"
)

func TestTurnsAtTimesOfDayAreReadAsWritten(t *testing.T) {
	h, found := load("process \"p\" { germinate on \"t\" { turn at 19:00 and 7 am } }\n")
	require.Len(t, h.Processes, 1, golden.Findings(found))
	st := model.First[*model.Germination](h.Processes[0])
	require.NotNil(t, st.TurnAt, golden.Findings(found))
	assert.Equal(t, []int{7 * 3600, 19 * 3600}, st.TurnAt.At)
	assert.Equal(t, 12*3600.0, st.Turn.SI)
	assert.Equal(t, 12*3600.0, st.TurnAt.Longest())
	assert.Equal(t, "19:00 and 7 am", st.TurnAt.Place().Text())
	assert.Equal(t, 15*3600.0, (&model.Daily{At: []int{7 * 3600, 16 * 3600}}).Longest())
	assert.Equal(t, 24*3600.0, (&model.Daily{At: []int{7 * 3600}}).Longest())
}

func TestTurnsThatCannotBeAreFound(t *testing.T) {
	for line, rule := range map[string]string{
		"turn":                        valueNeeded.Name,
		"turn every 8 h at 07:00":     twoOfAClause.Name,
		"turn at 07:00 and 07:00":     saidTwice.Name,
		"turn at 07:00 and":           valueNeeded.Name,
		"turn at 25:00":               badTime.Name,
		"turn at 7":                   "am-or-pm-missing",
		"turn at 7 h":                 wrongDimension.Name,
		"turn at 2026-03-06 07:00":    wrongDimension.Name,
		"turn at 07:00 to 19:00":      wrongDimension.Name,
		"turn at 07:00 and every 8 h": valueNeeded.Name,
	} {
		_, found := load("process \"p\" { germinate on \"t\" { " + line + " } }\n")
		assert.True(t, has(found, rule), "%s: %s", line, golden.Findings(found))
	}
}
