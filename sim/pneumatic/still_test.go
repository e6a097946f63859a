package pneumatic_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/grain"
	"maltwright/sim/pneumatic"
)

// standing is a bed without air in the hall, from 15 °C.
func standing(t testing.TB, depth float64, layers int) pneumatic.Bed {
	batch := cast(t, 0.45)
	return bed(t, batch, pneumatic.Vessel{Area: metre(batch, depth), Layers: layers}, 15)
}

// Measured: 0.06 K where the bed is at 35 °C and warms by 4 K an hour.
func TestAStandingBedHardlyDependsOnItsLayers(t *testing.T) {
	for _, depth := range []float64{0.12, 0.5} {
		few, many := standing(t, depth, 20), standing(t, depth, 40)
		for range 2 {
			require.NoError(t, few.Advance(8*hour, pneumatic.Supply{Room: hall()}))
			require.NoError(t, many.Advance(8*hour, pneumatic.Supply{Room: hall()}))
			assert.InDelta(t, many.Warmest(), few.Warmest(), 0.08, "%g m", depth)
			assert.InDelta(t, many.T(), few.T(), 0.08, "%g m", depth)
			assert.InDelta(t, many.Moisture(), few.Moisture(), 1e-5, "%g m", depth)
		}
	}
}

// A heap in the end stands where respiration ends, and is malt no more.
func TestAHeapRunsHotUntilItIsDead(t *testing.T) {
	b := standing(t, 0.5, 20)
	require.NoError(t, b.Advance(3*day, pneumatic.Supply{Room: hall()}))
	assert.Greater(t, b.Highest(), 40.0)
	assert.Less(t, b.Highest(), 50.0)
}

// First principles: at rest the heat made leaves by the faces. Kernels that hardly
// breathe and hold no free water cool to the room.
func TestDeadGrainCoolsToTheRoom(t *testing.T) {
	batch := cast(t, 0.45)
	batch.Water, batch.Clock, batch.Chitted = 0.12*batch.Dry, 0, 0
	b := bed(t, batch, pneumatic.Vessel{Area: metre(batch, 0.2)}, 30)
	room := pneumatic.Room{T: 12, RH: 0.55}
	require.NoError(t, b.Advance(20*day, pneumatic.Supply{Room: room}))
	assert.InDelta(t, 12, b.Warmest(), 0.3)
	assert.InDelta(t, 12, b.Coldest(), 0.3)
	assert.InEpsilon(t, b.Ledger().HeatStart-b.Ledger().HeatNow, b.Ledger().Faces+b.Ledger().Vapour, 1e-9)
}

// A slab of even heat q over the depth L, cooled on both faces alike, is q·L²/(8λ)
// warmer in its middle than on its faces. Here dry kernels make none, so the slab is
// reckoned while it cools: its slowest shape falls by exp(−α·μ²·t/(L/2)²), with
// μ·tan μ = h·(L/2)/λ.
func TestASlabCoolsByItsSlowestShape(t *testing.T) {
	const depth, conductivity, face = 0.2, 0.22, 8.0
	batch := cast(t, 0.45)
	batch.Water, batch.Clock, batch.Chitted = 0.10*batch.Dry, 0, 0
	b := bed(t, batch, pneumatic.Vessel{Area: metre(batch, depth), Layers: 40}, 30)
	biot := face * depth / 2 / conductivity
	low, high := 0.0, math.Pi/2
	for range 60 {
		if mu := (low + high) / 2; mu*math.Tan(mu) < biot {
			low = mu
		} else {
			high = mu
		}
	}
	volume := batch.Lot.BedVolume(batch.X(), batch.Clock)
	diffusivity := conductivity * volume / (1300*batch.Dry + 4187*batch.Water)
	slowest := diffusivity * low * low / (depth * depth / 4)
	// air in balance with the kernels takes no water
	rh, _, _ := batch.Lot.Profile.Malt.Humidity(batch.X(), 20)
	s := pneumatic.Supply{Room: pneumatic.Room{T: 20, RH: rh}}
	require.NoError(t, b.Advance(20*hour, s))
	before := b.T() - 20
	require.NoError(t, b.Advance(10*hour, s))
	assert.InEpsilon(t, slowest, math.Log(before/(b.T()-20))/(10*hour), 0.06)
}

// By hand, derived: D 5·10⁻⁶ m²/s and 0.284 kg/m³ of oxygen reach 0.2 m at the peak into a
// bed of 1.9 m³ for a tonne; its rootlets hold it apart to 2.6 m³ by then.
func TestOxygenReachesTwoDecimetres(t *testing.T) {
	b := settled(t, blown(500, 13, 0.98))
	batch := b.Batch()
	reach := grain.OxygenReach(grain.OxygenDemand(&batch, b.T()))
	assert.InDelta(t, 0.2*math.Sqrt(2.6/1.9), reach, 0.02)
	b.Turn()
	assert.InEpsilon(t, reach, b.OxygenDepth(), 1e-3, "an even bed")
	thin := bed(t, batch, pneumatic.Vessel{Area: metre(batch, 0.1)}, 15)
	assert.InEpsilon(t, thin.Depth(), thin.OxygenDepth(), 1e-12, "all through a thin one")
	assert.Equal(t, math.Inf(1), grain.OxygenReach(0))
	byHand := grain.StarchO2 * 2.0e3 / grain.StarchHeat / 1.9 // kg/(m³ s), 2 kW on 1.9 m³
	assert.InDelta(t, math.Sqrt(2*5.06e-6*0.284/byHand), grain.OxygenReach(byHand), 1e-3)
}
