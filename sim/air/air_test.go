package air_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
)

// ASHRAE Handbook of Fundamentals (2017), chapter 1, table of water at
// saturation; seen. The table comes from newer equations than the book's
// eq. 6, hence 0.03 %.
func TestSaturationPressureAgreesWithHandbookTable(t *testing.T) {
	for _, c := range []struct{ t, pressure float64 }{
		{5, 872.6}, {25, 3169.7}, {50, 12351.3}, {100, 101418},
	} {
		got, err := air.SaturationPressure(c.t)
		require.NoError(t, err)
		assert.InEpsilon(t, c.pressure, got, 3e-4, "at %g °C", c.t)
	}
}

// FAO Irrigation and Drainage Paper 56, table 2.3; seen. That paper uses the
// shorter Tetens formula, hence one unit in the last figure.
func TestSaturationPressureAgreesWithFAO56(t *testing.T) {
	for _, c := range []struct{ t, kPa float64 }{{15, 1.705}, {24.5, 3.075}} {
		got, err := air.SaturationPressure(c.t)
		require.NoError(t, err)
		assert.InDelta(t, c.kPa, got/1000, 0.001, "at %g °C", c.t)
	}
}

// ASHRAE Handbook of Fundamentals (2017), chapter 1, table of moist air; seen.
// The table includes the enhancement factor, so the ideal mixture reads 0.4 to
// 1.2 % low: both ends are held.
func TestSaturatedRatioIsLowerThanTheTableByTheEnhancementFactor(t *testing.T) {
	for _, c := range []struct{ t, ratio float64 }{
		{5, 0.005425}, {25, 0.020173}, {50, 0.086863}, {85, 0.838105},
	} {
		s, err := air.FromRH(c.t, 1, air.StandardPressure)
		require.NoError(t, err)
		low := 1 - s.W/c.ratio
		assert.GreaterOrEqual(t, low, 0.0035, "at %g °C", c.t)
		assert.LessOrEqual(t, low, 0.0125, "at %g °C", c.t)
	}
}

// ASHRAE worked example, 40 °C with a wet bulb of 20 °C, read off a chart;
// seen. The tolerances are what a chart can be read to: 0.1 g/kg, 0.1 kJ/kg,
// half a degree, half a per cent and half a litre.
func TestWorkedExampleOfFortyDegreesAndWetBulbTwenty(t *testing.T) {
	s, err := air.FromWetBulb(40, 20, air.StandardPressure)
	require.NoError(t, err)
	dew, err := s.DewPoint()
	require.NoError(t, err)
	assert.InDelta(t, 0.0065, s.W, 0.0001)
	assert.InDelta(t, 7, dew, 0.5)
	assert.InDelta(t, 0.14, s.RH(), 0.005)
	assert.InDelta(t, 56.7e3, s.Enthalpy(), 100)
	assert.InDelta(t, 0.896, s.Volume(), 0.0005)
}

func TestPressureFallsWithAltitude(t *testing.T) {
	sea, err := air.Pressure(0)
	require.NoError(t, err)
	assert.Equal(t, air.StandardPressure, sea)
	// ASHRAE Handbook of Fundamentals (2017), chapter 1, table 1: 79.495 kPa
	// at 2000 m; from memory.
	high, err := air.Pressure(2000)
	require.NoError(t, err)
	assert.InDelta(t, 79495, high, 0.5)
}

func TestValuesOutsideTheEquationsAreRefused(t *testing.T) {
	const p = air.StandardPressure
	for name, call := range map[string]func() error{
		"too hot for saturation": func() error { _, err := air.SaturationPressure(201); return err },
		"too high a place":       func() error { _, err := air.Pressure(12000); return err },
		"more than saturated":    func() error { _, err := air.New(20, 0.02, p); return err },
		"negative ratio":         func() error { _, err := air.New(20, -1e-6, p); return err },
		"humidity in per cent":   func() error { _, err := air.FromRH(20, 60, p); return err },
		"boiling away":           func() error { _, err := air.FromRH(120, 0.9, p); return err },
		"wet bulb above air":     func() error { _, err := air.FromWetBulb(20, 21, p); return err },
		"wet bulb of no air":     func() error { _, err := air.FromWetBulb(60, 5, p); return err },
		"pressure in kPa":        func() error { _, err := air.FromRH(20, 0.5, 101); return err },
		"dew point of dry air":   func() error { _, err := (air.State{T: 20, P: p}).DewPoint(); return err },
		"wet bulb of no state":   func() error { _, err := (air.State{}).WetBulb(); return err },
	} {
		var refused *air.RangeError
		require.ErrorAs(t, call(), &refused, name)
		assert.Less(t, refused.Low, refused.High, name)
	}
}

func TestRefusalNamesQuantityValueAndInterval(t *testing.T) {
	_, err := air.SaturationPressure(300)
	assert.EqualError(t, err, "temperature 300 °C is outside -100 to 200 °C")
	_, err = air.FromRH(20, 60, air.StandardPressure)
	assert.EqualError(t, err, "relative humidity 6000 % is outside 0 to 100 %")
}
