package pneumatic_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/pneumatic"
)

// cutInto is five days of a tonne in a box, turned every twelve hours, in chunks of so
// many seconds.
func cutInto(t testing.TB, layers int, chunk float64) pneumatic.Bed {
	batch := cast(t, 0.45)
	b := bed(t, batch, pneumatic.Vessel{Area: metre(batch, 1), Layers: layers}, 15)
	for range 10 {
		for at := 0.0; at < 12*hour; at += chunk {
			require.NoError(t, b.Advance(math.Min(chunk, 12*hour-at), blown(500, 13, 0.98)))
		}
		if b.Turns() < 9 {
			b.Turn()
		}
	}
	return b
}

func near(t *testing.T, want, got pneumatic.Bed, kelvin, points float64, what string) {
	t.Helper()
	for _, at := range []float64{0.1, 0.5, 0.9} {
		assert.InDelta(t, want.At(at).T, got.At(at).T, kelvin, what)
	}
	assert.InDelta(t, want.T(), got.T(), kelvin, what)
	assert.InDelta(t, want.Moisture(), got.Moisture(), points/100, what)
}

// Twenty layers and forty come to the same within a hundredth of a kelvin; ten are
// within two.
func TestResultHardlyDependsOnTheLayers(t *testing.T) {
	many := cutInto(t, 40, 12*hour)
	near(t, many, cutInto(t, 20, 12*hour), 0.01, 0.002, "20 layers")
	near(t, many, cutInto(t, 10, 12*hour), 0.02, 0.01, "10 layers")
}

func TestResultHardlyDependsOnTheStep(t *testing.T) {
	fine := cutInto(t, 0, 10)
	for _, chunk := range []float64{12 * hour, 600, 97} {
		near(t, fine, cutInto(t, 0, chunk), 0.002, 0.001, "")
	}
}

// Right after a turn, and under a controller, too.
func TestStepHardlyMattersWhileTheFrontPasses(t *testing.T) {
	run := func(chunk float64) pneumatic.Bed {
		s := blown(400, 12, 0.95)
		s.Follow = &pneumatic.Follow{T: 16, Least: 8, Most: 18}
		b := tonne(t)
		require.NoError(t, b.Advance(day, s))
		b.Turn()
		for at := 0.0; at < hour; at += chunk {
			require.NoError(t, b.Advance(chunk, s))
		}
		return b
	}
	near(t, run(5), run(600), 0.01, 0.002, "")
}

// More air than any bed has, through thin layers: the step stays long and the bed
// stands at the wet bulb.
func TestMuchAirThroughAThinBed(t *testing.T) {
	batch := castOf(t, 4.4, 0.45)
	area := metre(batch, 0.05)
	b := bed(t, batch, pneumatic.Vessel{Area: area}, 20)
	s := pneumatic.Supply{Room: hall(), Flow: area, T: 14, RH: 1}
	require.NoError(t, b.Advance(day, s))
	assert.InDelta(t, 14, b.Warmest(), 0.1)
}
