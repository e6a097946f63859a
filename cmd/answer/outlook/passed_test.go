package outlook

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

// steeped is a forecast of a steep to 42 to 46 % that ends with a rest and a soak, at so much moisture.
func steeped(t *testing.T, comes float64) *forecast.Forecast {
	t.Helper()
	low, err := quantity.Parse("42 %")
	require.NoError(t, err)
	high, err := quantity.Parse("46 %")
	require.NoError(t, err)
	aim := &model.Range{Range: quantity.Range{Low: low, High: high}}
	const hour = 3600
	return &forecast.Forecast{Stages: []forecast.Stage{{Kind: model.SteepStage, Of: &model.Steep{Target: aim}, Steps: []forecast.Step{
		{Kind: model.SoakStep, Label: "soak 1", Start: 0, End: 6 * hour, MoistureStart: 0.12, MoistureEnd: 0.30},
		{Kind: model.RestStep, Label: "rest 1", Start: 6 * hour, End: 24 * hour, MoistureStart: 0.30, MoistureEnd: 0.45},
		{Kind: model.SoakStep, Label: "soak 2", Start: 24 * hour, End: 30 * hour, MoistureStart: 0.45, MoistureEnd: comes},
	}}}}
}

// Grain that is as moist as the steep aims at needs no further soak.
func TestATargetThatIsPassedIsTold(t *testing.T) {
	const hour = 3600
	p := PassedOf(steeped(t, 0.5), 20*hour, 0.448)
	require.NotNil(t, p)
	assert.Equal(t, "42 to 46 %", p.Aim)
	assert.Equal(t, []string{"soak 2"}, p.Soaks)
	assert.InDelta(t, 0.5, float64(p.Comes), 1e-9)
	assert.InDelta(t, 0.448, float64(p.Moisture), 1e-9)

	p = PassedOf(steeped(t, 0.5), 24*hour+300, 0.48)
	require.NotNil(t, p, "a soak that has just begun may still be drained")
	assert.InDelta(t, 0.45, float64(p.Moisture), 1e-9, "what hangs on the grain by then is of the soak")

	assert.Nil(t, PassedOf(steeped(t, 0.5), 20*hour, 0.41), "below what is aimed at")
	assert.Nil(t, PassedOf(steeped(t, 0.46), 20*hour, 0.448), "the soak still ends within it")
	assert.Nil(t, PassedOf(steeped(t, 0.5), 26*hour, 0.48), "no soak is left")
	assert.Nil(t, PassedOf(steeped(t, 0.5), 40*hour, 0.48), "the steep is over")
}
