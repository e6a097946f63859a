package read

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/source/golden"
)

func TestAirAtIntervalsIsReadAsWritten(t *testing.T) {
	h, found := load("process \"p\" {\n  steep {\n    soak 7 h in water at 13 °C\n    aerate for 300 s every 0.5 h\n  }\n}\n")
	require.Len(t, h.Processes, 1, golden.Findings(found))
	steep := model.First[*model.Steep](h.Processes[0])
	require.NotNil(t, steep.Aerate)
	assert.Equal(t, 1800.0, steep.Aerate.Every.SI)
	assert.Equal(t, 300.0, steep.Aerate.For.SI)
	assert.Equal(t, "0.5 h", steep.Aerate.Every.Place.Text())
	assert.Equal(t, "aerate for 300 s every 0.5 h", steep.Aerate.Place().Text())
	assert.Len(t, steep.Steps, 1, "it is no step")
}

func TestAirAtIntervalsStandsOnceAndNotInARepeat(t *testing.T) {
	const line = "aerate every 30 min for 5 min"
	_, found := load("process \"p\" { steep { " + line + "; soak 7 h in water at 13 °C; " + line + " } }")
	assert.True(t, has(found, "said-twice"), golden.Findings(found))
	_, found = load("process \"p\" { steep { repeat 2 times { soak 7 h in water at 13 °C; " + line + " } } }")
	assert.True(t, has(found, wordOutOfPlace.Name), golden.Findings(found))
}
