package pneumatic_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/pneumatic"
)

func TestAnUnboundedPlantMakesTheAirAsked(t *testing.T) {
	b := tonne(t)
	s := blown(500, 12, 0.97)
	require.NoError(t, b.Advance(hour, s))
	d := b.Draught()
	assert.InDelta(t, 12, d.On.T, 1e-9)
	assert.InDelta(t, 0.97, d.OnRH, 1e-6)
	assert.Zero(t, d.Short)
	assert.Zero(t, b.Plant().Short)
}

// With neither cooler nor heater the spray alone brings air to its wet bulb: a hall
// of 20 °C and 50 % has 13.8 °C by the psychrometric chart.
func TestSprayAloneCoolsToTheWetBulb(t *testing.T) {
	b := tonne(t)
	s := blown(500, 13, 1)
	s.Room = pneumatic.Room{T: 20, RH: 0.5}
	s.Cooler, s.Heater = new(0.0), new(0.0)
	require.NoError(t, b.Advance(hour, s))
	d := b.Draught()
	assert.InDelta(t, 13.8, d.On.T, 0.1)
	assert.InDelta(t, 1, d.OnRH, 1e-6)
	assert.Greater(t, d.Short, 0.0, "0.8 K of cold is short")
	assert.InDelta(t, 500.0/3600*1.23*0.8*2.8e3, d.Short, 130)
	s.NoSpray = true
	require.NoError(t, b.Advance(hour, s))
	assert.InDelta(t, 20, b.Draught().On.T, 1e-6, "without it the air stays as it is")
	assert.InDelta(t, 0.5, b.Draught().OnRH, 1e-6)
}

// By hand: a fan behind the spray warms the air by Δp/(1,230·η): 0.8 K at 600 Pa and
// an efficiency of 0.6, which makes 95 % of air that was saturated.
func TestAFanBehindTheSprayDriesTheAir(t *testing.T) {
	b := tonne(t)
	s := blown(500, 13, 1)
	s.Fan = pneumatic.Fan{Pressure: 600, Efficiency: 0.6}
	require.NoError(t, b.Advance(hour, s))
	assert.InDelta(t, 0.95, b.Draught().OnRH, 0.005)
	assert.InEpsilon(t, 500*600/0.6, b.Plant().Fan, 1e-9, "J in an hour of 500 m³")
}

func TestALimitedPlantGivesWhatItHasAndSaysWhatItLacks(t *testing.T) {
	for name, c := range map[string]struct {
		room           pneumatic.Room
		cooler, heater float64
		asked          float64
	}{
		"cold short": {pneumatic.Room{T: 25, RH: 0.6}, 2000, 0, 12},
		"heat short": {pneumatic.Room{T: 3, RH: 0.8}, 0, 2000, 14},
		"led round":  {pneumatic.Room{T: 20, RH: 0.6}, 1000, 0, 12},
	} {
		b := tonne(t)
		s := blown(500, c.asked, 0.98)
		s.Room, s.Cooler, s.Heater = c.room, &c.cooler, &c.heater
		if name == "led round" {
			s.Return = 0.8
		}
		require.NoError(t, b.Advance(6*hour, s))
		d, p := b.Draught(), b.Plant()
		assert.Greater(t, d.Short, 100.0, name)
		assert.Equal(t, c.asked, d.Asked, name)
		assert.Equal(t, c.cooler > 0, d.On.T > c.asked+0.2, "%s: %g", name, d.On.T)
		// exhaust led back is known to within what the bed changes in a step
		assert.InEpsilon(t, max(c.cooler, c.heater), max(p.PeakCooler, p.PeakHeater), 0.02, name)
		assert.GreaterOrEqual(t, p.PeakShort, d.Short, name)
		// what it lacks would have done: a plant with so much more reaches the air
		enough := 1.02 * p.PeakShort
		c.cooler, c.heater = c.cooler*(1+enough/max(c.cooler, 1)), c.heater*(1+enough/max(c.heater, 1))
		again := tonne(t)
		require.NoError(t, again.Advance(6*hour, s))
		assert.InDelta(t, c.asked, again.Draught().On.T, 0.05, name)
	}
}

// Saturated air, heated, keeps its water where nothing sprays: it is dry at the bed.
func TestHeatedAirWithoutSprayIsDry(t *testing.T) {
	b := tonne(t)
	s := blown(500, 15, 1)
	s.Room, s.NoSpray = pneumatic.Room{T: 5, RH: 1}, true
	require.NoError(t, b.Advance(hour, s))
	assert.InDelta(t, 0.51, b.Draught().OnRH, 0.01, "872 of 1,705 Pa")
	assert.Zero(t, b.Plant().Sprayed)
}

// By hand: 250 W in 500 m³/h of 1.23 kg/m³ and 1.02 kJ/(kg K) is 1.4 K. It comes on before spray
// and cooler, which make the same air and have it to take out: 0.9 MJ in an hour.
func TestTheCoolerTakesOutWhatItsFanDraws(t *testing.T) {
	run := func(power float64) (pneumatic.Draught, pneumatic.Plant) {
		b := tonne(t)
		s := blown(500, 12, 0.97)
		s.Room = pneumatic.Room{T: 18, RH: 0.8}
		s.Fan.Power = power
		require.NoError(t, b.Advance(hour, s))
		return b.Draught(), b.Plant()
	}
	on, none := run(0)
	off, some := run(250)
	assert.InDelta(t, on.OnRH, off.OnRH, 1e-9)
	assert.InDelta(t, on.On.T, off.On.T, 1e-9)
	assert.InEpsilon(t, 250*hour, some.Fan, 1e-9)
	assert.InEpsilon(t, 250*hour, some.Cooler-none.Cooler, 1e-6)
	assert.InEpsilon(t, none.PeakCooler+250, some.PeakCooler, 1e-6)
	// with spray alone the wet bulb rises by what 1.4 K of dry warmth lift it: some 0.5 K at 14 °C
	wet := func(power float64) float64 {
		b := tonne(t)
		s := blown(500, 8, 1)
		s.Room, s.Cooler, s.Heater = pneumatic.Room{T: 20, RH: 0.5}, new(0.0), new(0.0)
		s.Fan.Power = power
		require.NoError(t, b.Advance(hour, s))
		return b.Draught().On.T
	}
	assert.InDelta(t, 0.55, wet(250)-wet(0), 0.05, "250 W over 0.170 kg/s and 2.7 kJ/(kg K)")
	assert.InDelta(t, 20*1.02/2.7, wet(1e9)-wet(0), 1.6, "of a fan that hardly moves air the most is 20 K")
}

// What is reckoned of another room is what a bed there takes: the bed does not know of the room.
func TestTheCoolingOfAnotherRoomIsWhatItTakesThere(t *testing.T) {
	for _, back := range []float64{0, 0.6} {
		s := blown(500, 12, 0.97)
		s.Return, s.Fan.Power = back, 250
		mild, warm := s, s
		mild.Room, warm.Room = pneumatic.Room{T: 11, RH: 0.72}, pneumatic.Room{T: 26, RH: 0.72}
		here, there := tonne(t), tonne(t)
		require.NoError(t, here.Advance(day, mild))
		require.NoError(t, there.Advance(day, warm))
		told, err := here.Cooling(mild, 26, 0.72)
		require.NoError(t, err)
		took, err := there.Cooling(warm, 26, 0.72)
		require.NoError(t, err)
		assert.InEpsilon(t, took, told, 1e-3)
	}
	stands := tonne(t)
	none, err := stands.Cooling(blown(500, 12, 0.97), 26, 0.72)
	require.NoError(t, err)
	assert.Zero(t, none)
}
