package check

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/sim/forecast"
)

// A process in pounds and degrees Fahrenheit and its metric twin are the same
// process. The moment of a gate is found to within 6 s, so times may differ by that
// much a gate; moistures and weights by what the malt dries in that time.
func TestAProcessInPoundsHasTheForecastOfItsMetricTwin(t *testing.T) {
	pounds, metric := forecastOf(t, "testdata/units/pounds.malt"), forecastOf(t, "testdata/units/metric.malt")
	const gates = 4
	require.Equal(t, len(metric.Stages), len(pounds.Stages))
	for i, st := range metric.Stages {
		require.Equal(t, len(st.Steps), len(pounds.Stages[i].Steps))
		for k, want := range st.Steps {
			got := pounds.Stages[i].Steps[k]
			assert.Equal(t, want.Label, got.Label)
			assert.InDelta(t, want.End, got.End, gates*6, "%s, s", want.Label)
			assert.InDelta(t, want.MoistureEnd, got.MoistureEnd, 1e-4, "%s, share", want.Label)
			assert.InEpsilon(t, want.WeightEnd, got.WeightEnd, 1e-4, "%s, kg", want.Label)
		}
	}
	assert.InEpsilon(t, metric.Totals.Malt, pounds.Totals.Malt, 1e-4)
	require.Len(t, pounds.Expects, 1)
	assert.Equal(t, metric.Expects[0].Holds, pounds.Expects[0].Holds)
}

func forecastOf(t *testing.T, path string) *forecast.Forecast {
	r := checkFile(t, path)
	for _, f := range r.Findings {
		require.Less(t, f.Severity, finding.Fault, f.Message)
	}
	require.Len(t, r.House.Processes, 1)
	f, err := forecast.Run(r.House.Processes[0], forecast.Options{})
	require.NoError(t, err)
	require.False(t, f.BrokenOff())
	return f
}
