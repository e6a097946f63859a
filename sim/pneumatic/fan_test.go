package pneumatic_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/pneumatic"
	"maltwright/sim/work"
)

func TestAFanByTheClockRunsItsShare(t *testing.T) {
	s := blown(500, 13, 0.98)
	s.Run.Clock = &pneumatic.Clock{On: 20 * 60, Every: hour}
	always := tonne(t)
	require.NoError(t, always.Advance(day, blown(500, 13, 0.98)))
	for _, chunk := range []float64{600, 431, day} {
		b := tonne(t)
		for b.Age() < day-1 {
			require.NoError(t, b.Advance(math.Min(chunk, day-b.Age()), s))
		}
		assert.InEpsilon(t, always.Plant().AirPassed/3, b.Plant().AirPassed, 1e-6, "%g", chunk)
		assert.Greater(t, b.T(), always.T())
	}
}

func TestAThermostatKeepsTheBedAtItsMark(t *testing.T) {
	s := blown(500, 12, 0.98)
	s.Run.Thermostat = &pneumatic.Thermostat{Above: 16, Difference: 0.5}
	b := tonne(t)
	passed, low, high := 0.0, 99.0, 0.0
	for b.Age() < 3*day {
		require.NoError(t, b.Advance(120, s))
		if b.Age() > 2*day {
			low, high = math.Min(low, b.T()), math.Max(high, b.T())
		}
		passed = b.Plant().AirPassed
	}
	assert.InDelta(t, 16, high, 0.03)
	assert.InDelta(t, 15.5, low, 0.03)
	assert.Greater(t, passed, 0.0)
	d := b.Draught()
	assert.True(t, d.Flow == 0 || d.Flow == s.Flow)
}

func TestTheWarmestLayerStartsTheFanSooner(t *testing.T) {
	run := func(warmest bool) float64 {
		s := blown(300, 12, 0.98)
		s.Run.Thermostat = &pneumatic.Thermostat{Above: 17, Difference: 0.5, Warmest: warmest}
		b := tonne(t)
		require.NoError(t, b.Advance(2*day, s))
		return b.T()
	}
	assert.Less(t, run(true), run(false)-0.5)
}

// The flow that follows the bed carries its heat, between its bounds.
func TestTheFlowFollowsTheBed(t *testing.T) {
	s := blown(0, 14, 0.98)
	s.Follow = &pneumatic.Follow{T: 16, By: pneumatic.Airflow, Least: 150 / hour, Most: 700 / hour}
	b := tonne(t)
	least, most := 1e9, 0.0
	for b.Age() < 3*day-1 {
		keep(t, &b, 600, 12*hour, s)
		flow := b.Draught().Flow * hour
		least, most = math.Min(least, flow), math.Max(most, flow)
	}
	assert.InDelta(t, 150, least, 1e-6, "the bed first warms to its mark")
	assert.Less(t, most, 700.1)
	assert.InDelta(t, 16, b.T(), 0.05)
}

func TestTheAirOnThatFollowsStaysInItsBounds(t *testing.T) {
	s := blown(300, 14, 0.98)
	s.Follow = &pneumatic.Follow{T: 16, Least: 14, Most: 15}
	b := settled(t, s)
	assert.InDelta(t, 14, b.Draught().On.T, 1e-5)
	assert.Greater(t, b.T(), 16.5, "what it cannot hold it lets go")
}

func TestNothingBelongsToAirThatStands(t *testing.T) {
	b := tonne(t)
	s := pneumatic.Supply{Room: hall()}
	require.NoError(t, b.Advance(hour, s))
	d := b.Draught()
	assert.Zero(t, d.Flow)
	assert.True(t, math.IsNaN(d.CO2) && math.IsNaN(d.On.T))
	assert.Greater(t, d.Heat, 0.0)
	assert.Zero(t, b.Plant())
}

// With a clock beside the thermostat the fan runs in a cold bed as well, and the
// steps stay long.
func TestAClockBesideAThermostat(t *testing.T) {
	s := blown(500, 12, 0.98)
	s.Run = pneumatic.Run{Clock: &pneumatic.Clock{On: 30 * 60, Every: 2 * hour}, Thermostat: &pneumatic.Thermostat{Above: 20, Difference: 0.5}}
	b := tonne(t)
	m := work.NewMeter(context.Background(), nil)
	b.Meter(m)
	require.NoError(t, b.Advance(2*day, s))
	assert.Less(t, m.Spent(), 100_000)
	assert.Greater(t, b.Plant().AirPassed, 0.0)
}

func TestAMeterThatIsUsedUpEndsIt(t *testing.T) {
	b := tonne(t)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	b.Meter(work.NewMeter(ctx, nil))
	before := b
	require.ErrorIs(t, b.Advance(30*day, blown(500, 13, 0.98)), context.Canceled)
	assert.Equal(t, before, b)
}
