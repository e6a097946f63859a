package air_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/air"
)

func drawn(t *rapid.T) air.State {
	pressure, err := air.Pressure(rapid.Float64Range(-400, 4000).Draw(t, "altitude"))
	require.NoError(t, err)
	temperature := rapid.Float64Range(-40, 80).Draw(t, "temperature")
	rh := rapid.Float64Range(0.01, 1).Draw(t, "rh")
	s, err := air.FromRH(temperature, rh, pressure)
	require.NoError(t, err)
	return s
}

func TestDewPointWetBulbAndAirStandInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawn(t)
		dew, err := s.DewPoint()
		require.NoError(t, err)
		wet, err := s.WetBulb()
		require.NoError(t, err)
		// The table and the bisection leave some 1e-6 K between them; around
		// freezing the wet bulb jumps between ice and water by up to 0.6 K.
		slack := 1e-5
		if math.Abs(wet) < 1 || math.Abs(dew) < 1 {
			slack = 0.6
		}
		require.LessOrEqual(t, dew, wet+slack)
		require.LessOrEqual(t, wet, s.T+1e-9)
	})
}

func TestWetBulbNearFindsTheSameBulbFromAnyGuess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawn(t)
		wet, err := s.WetBulb()
		require.NoError(t, err)
		guess := rapid.Float64Range(-50, 100).Draw(t, "guess")
		require.InDelta(t, wet, s.WetBulbNear(guess), 1e-6)
	})
}

func TestConstructorsInvertTheMethods(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawn(t)
		back, err := air.FromRH(s.T, min(s.RH(), 1), s.P)
		require.NoError(t, err)
		require.InEpsilon(t, s.W, back.W, 1e-6)
		wet, err := s.WetBulb()
		require.NoError(t, err)
		if math.Abs(wet) < 1e-6 {
			t.Skip("on the jump between ice and water")
		}
		again, err := air.FromWetBulb(s.T, wet, s.P)
		require.NoError(t, err)
		require.InDelta(t, s.W, again.W, 1e-9*(1+s.W)*1e2)
	})
}

func TestNothingPanicsAndNothingIsNotANumber(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		any := rapid.Float64()
		a, b, c := any.Draw(t, "a"), any.Draw(t, "b"), any.Draw(t, "c")
		for _, make := range []func(a, b, c float64) (air.State, error){air.New, air.FromRH, air.FromWetBulb} {
			s, err := make(a, b, c)
			if err != nil {
				continue
			}
			wet, err := s.WetBulb()
			require.NoError(t, err)
			require.False(t, math.IsNaN(wet+s.RH()+s.Enthalpy()+s.Volume()))
		}
		_ = air.Saturation(a)
		_, _ = air.SaturationSlope(b)
	})
}
