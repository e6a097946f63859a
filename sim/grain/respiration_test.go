package grain_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/grain"
)

// Stoichiometry of C6H10O5 + 6 O2 → 6 CO2 + 5 H2O: what goes in comes out, to
// the last figures of a float.
func TestBurningStarchKeepsItsMass(t *testing.T) {
	assert.InDelta(t, 1+grain.StarchO2, grain.StarchCO2+grain.StarchWater, 4e-16)
	assert.InDelta(t, 1.63, grain.StarchCO2, 0.005)
	assert.InDelta(t, 0.556, grain.StarchWater, 0.0005)
	assert.InDelta(t, 1.185, grain.StarchO2, 0.0015)
}

// First principles: 1 % of the dry matter a day of one tonne of barley at 12 %
// is 1.77 kW.
func TestHeatOfOnePerCentADay(t *testing.T) {
	watts := 1000 * 0.88 * 0.01 / 86400 * grain.StarchHeat
	assert.InDelta(t, 1770, watts, 5)
}

func speed(t *testing.T, at, clock float64) float64 {
	l := grain.LotOf(profile(t, "barley"), 1, 0.14)
	require.NoError(t, l.Check())
	return l.RespirationSpeed(clock, at, 0.45, 1)
}

// Handbook (Narziß), from memory: respiration about doubles in ten kelvin.
func TestRespirationDoublesInTenKelvin(t *testing.T) {
	assert.InDelta(t, 2.2, speed(t, 16, 1000)/speed(t, 6, 1000), 1e-9)
}

// Müller and others 2014, abstract seen: the loss of fresh growth hardly rises from 16 to
// 24 °C. The clock runs by the temperature, so that the loss to equal growth goes as
// speed over temperature.
func TestWarmGrowthLosesHardlyMore(t *testing.T) {
	loss := func(at float64) float64 { return speed(t, at, 1000) / at }
	assert.InDelta(t, 1.02, loss(24)/loss(16), 0.02)
	assert.Less(t, loss(12), loss(16), "cooler growth loses no more")
}

// Common practice: green malt is dead above 50 °C.
func TestHeatEndsRespiration(t *testing.T) {
	assert.Greater(t, speed(t, 45, 1000), 0.0)
	assert.Less(t, speed(t, 45, 1000), speed(t, 35, 1000))
	assert.Zero(t, speed(t, 50, 1000))
}

func TestDryKernelsDoNotRespire(t *testing.T) {
	l := grain.LotOf(profile(t, "barley"), 1, 0.14)
	require.NoError(t, l.Check())
	assert.Zero(t, l.RespirationSpeed(2000, 16, 0.29, 1))
	assert.Zero(t, l.RespirationSpeed(2000, 16, 0.45, 0), "without air")
}
