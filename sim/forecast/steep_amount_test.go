package forecast

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// twiceSoaked is a forecast of a steep of two soaks and a rest.
func twiceSoaked(t *testing.T, first, rest, last string) *Forecast {
	t.Helper()
	return run1(t, `steep in "tub" { soak 8 h `+first+`; rest 10 h in air at 14 °C `+rest+`; soak 8 h `+last+" }\n"+growText+kilnText)
}

const plainWater = "in water at 13 °C"

// The charge of the house of these tests is 5 kg.
func TestAllWaterOfTheSteepIsCounted(t *testing.T) {
	for _, c := range []struct {
		first, rest, last string
		kg                float64
	}{
		{plainWater, "", plainWater, 15},
		{"in 12 l water at 13 °C", "", plainWater, 12 + 7.5},
		{"in 12 kg water at 13 °C", "", "in 10 l water at 13 °C", 22},
		{plainWater + " with overflow 6 l/h", "", plainWater, 15 + 8*6},
		{plainWater, "with spray 2 l/h", plainWater, 15 + 10*2},
	} {
		assert.InDelta(t, c.kg, twiceSoaked(t, c.first, c.rest, c.last).Totals.SteepWater, 1e-6, "%+v", c)
	}
	wet := twiceSoaked(t, plainWater, "with spray", plainWater).Totals.SteepWater
	assert.Greater(t, wet, 15.0, "a spray brings what the grain takes up")
	assert.Less(t, wet, 17.0)
}

func TestWarmGrainWarmsLittleWater(t *testing.T) {
	little, much := twiceSoaked(t, "in 6 l water at 8 °C", "", plainWater), twiceSoaked(t, "in 60 l water at 8 °C", "", plainWater)
	assert.Greater(t, little.Stages[0].Steps[0].MoistureEnd, much.Stages[0].Steps[0].MoistureEnd, "and drinks faster")
	assert.Empty(t, Troubles[NotCovered](much))
	mixed := 0
	for _, a := range little.Assumed {
		if _, ok := a.(MixedWater); ok {
			mixed++
		}
	}
	assert.Equal(t, 1, mixed)
}

func TestTooLittleWaterIsTroubleOnceForEachSoak(t *testing.T) {
	low := Troubles[NotCovered](twiceSoaked(t, "in 3.2 l water at 13 °C", "", "in 3.2 l water at 13 °C"))
	require.Len(t, low, 2)
	assert.Equal(t, []int{1, 2}, []int{low[0].Soak, low[1].Soak})
	assert.Greater(t, low[0].Need, 0.0032)
	assert.Empty(t, Troubles[NotCovered](twiceSoaked(t, "in 3.2 l water at 13 °C with overflow 1 l/min", "", plainWater)))
	f := twiceSoaked(t, "in 1 l water at 13 °C", "", plainWater)
	assert.Len(t, Troubles[NotCovered](f), 1)
	assert.Len(t, Troubles[Unable](f), 1, "so little is beyond the model, which says so")
}

func TestTheVesselMustHoldTheWaterThatIsSaid(t *testing.T) {
	assert.Empty(t, Troubles[VesselFull](twiceSoaked(t, "in 20 l water at 13 °C", "", plainWater)))
	full := Troubles[VesselFull](twiceSoaked(t, "in 90 l water at 13 °C", "", plainWater))
	require.Len(t, full, 1)
	assert.InDelta(t, 0.090+5.0/1280, full[0].Need, 1e-6, "the water and the kernels, as they are poured over")
}

func TestFreshWaterThatRunsInBringsOxygen(t *testing.T) {
	still, running := run1(t, wetText("")), run1(t, wetText(" with overflow 20 l/h"))
	require.Positive(t, airless(still))
	assert.Less(t, airless(running), airless(still))
	blown := run1(t, wetText(" with airflow 50 l/h"))
	assert.Less(t, airless(blown), airless(still))
	require.Len(t, Troubles[AirBlown](blown), 1)
	assert.InDelta(t, 0.05/3600/5, Troubles[AirBlown](blown)[0].Each, 1e-12)
}

func TestDrawnAirCarriesTheCarbonDioxideOff(t *testing.T) {
	f := twiceSoaked(t, plainWater, "with airflow 100 l/h", plainWater)
	drawn := Troubles[AirDrawn](f)
	require.Len(t, drawn, 1)
	assert.InDelta(t, 0.02/3600, drawn[0].Each, 1e-12)
	more := Troubles[AirDrawn](twiceSoaked(t, plainWater, "with airflow 200 l/h", plainWater))[0]
	assert.InEpsilon(t, drawn[0].CO2/2, more.CO2, 0.1, "twice the air, half the share, but for what cooling slows")
	still := twiceSoaked(t, plainWater, "", plainWater)
	assert.Less(t, f.Stages[0].Steps[1].WeightEnd, still.Stages[0].Steps[1].WeightEnd, "and dries a little")
}

func TestASprayKeepsOnWetting(t *testing.T) {
	dry, wet := twiceSoaked(t, plainWater, "", plainWater), twiceSoaked(t, plainWater, "with spray", plainWater)
	assert.Greater(t, wet.Stages[0].Steps[1].MoistureEnd, dry.Stages[0].Steps[1].MoistureEnd+0.03)
}
