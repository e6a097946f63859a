package grain_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
	"maltwright/sim/grain"
)

// Carrier's equation for the evaporation of a still pool (ASHRAE Applications,
// from memory): (0.089 + 0.0782·v)·Δp/latent heat, Δp in Pa. The face must
// stand within 20 % of it at room speeds; the two differ in how they take the
// wind.
func TestEvaporationStandsNearThatOfAPool(t *testing.T) {
	for _, speed := range []float64{0, 0.2, 0.5} {
		f, err := grain.NewFace(20, 0.6, speed, nil)
		require.NoError(t, err)
		gap := 0.4 * air.Saturation(20)
		pool := (0.089 + 0.0782*speed) * gap / 2.454e6
		assert.InEpsilon(t, pool, f.Evaporation(20, 1), 0.2, "%v m/s", speed)
	}
}

func TestAFaceInBalanceNeitherDriesNorWets(t *testing.T) {
	f, err := grain.NewFace(18, 0.7, 0, nil)
	require.NoError(t, err)
	assert.InDelta(t, 0, f.Evaporation(18, 0.7), 1e-12)
	assert.Negative(t, f.Evaporation(5, 1), "dew on a cold bed")
}

func TestRoomsOutOfRangeAreRefused(t *testing.T) {
	for _, r := range [][4]float64{{-31, 0.5, 0, air.StandardPressure}, {51, 0.5, 0, air.StandardPressure}, {20, 1.1, 0, air.StandardPressure}, {20, 0.5, 6, air.StandardPressure}, {20, 0.5, 0, 10}, {20, 0.5, 0, 0}} {
		_, err := grain.NewFace(r[0], r[1], r[2], &r[3])
		var out *air.RangeError
		assert.ErrorAs(t, err, &out, "%v", r)
	}
}

// By hand: the film of a face that air leaves through, φ/(e^φ − 1), which is 1 without air and
// 0.582 where the flow is as much as the face conducts.
func TestAirThatLeavesThroughAFacePushesTheRoomsAirOff(t *testing.T) {
	f, err := grain.NewFace(20, 0.5, 0.3, nil)
	require.NoError(t, err)
	open := f.Evaporation(20, 1)
	conducts := open / (air.HumidityRatio(air.Saturation(20), air.StandardPressure) - air.HumidityRatio(0.5*air.Saturation(20), air.StandardPressure))
	blown := f.Blown(conducts)
	assert.InEpsilon(t, 0.58198, blown.Evaporation(20, 1)/open, 1e-4)
	assert.InEpsilon(t, 0.58198, blown.Conductance()/f.Conductance(), 1e-4)
	none, little := f.Blown(0), f.Blown(1e-9*conducts)
	assert.InDelta(t, open, none.Evaporation(20, 1), 1e-15)
	assert.InEpsilon(t, open, little.Evaporation(20, 1), 1e-8)
	strong := f.Blown(1000 * conducts)
	assert.Zero(t, strong.Evaporation(20, 1), "a strong flow leaves nothing")
}
