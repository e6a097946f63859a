package steep_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/grain"
	"maltwright/sim/steep"
)

const hour = 3600.0

// lot is one tonne of the species at 12 %.
func lot(t testing.TB, species string) grain.Lot {
	t.Helper()
	p, err := grain.Of(species)
	require.NoError(t, err)
	return grain.LotOf(p, 880, 0.12/0.88)
}

func raw(t testing.TB, l grain.Lot) steep.State {
	t.Helper()
	s, err := steep.New(l)
	require.NoError(t, err)
	return s
}

// schedule runs soak, rest, soak, … of so many hours at t °C.
func schedule(t testing.TB, s *steep.State, at float64, hours ...float64) {
	t.Helper()
	for i, h := range hours {
		if i%2 == 0 {
			require.NoError(t, s.Soak(h*hour, steep.Water{T: at}))
		} else {
			require.NoError(t, s.Rest(h*hour, steep.Air{T: at, RH: 0.9}))
		}
	}
}

// Kunze, Technology Brewing and Malting, from memory: hours of continuous
// steeping to 40, 43 and 46 %. Accepted within 1.0 point rms, none off by more
// than 2: the table's own steps are about that uneven.
func TestContinuousSteepFollowsTheHandbookTable(t *testing.T) {
	table := map[float64][3]float64{
		9: {47.5, 78, 101}, 13: {34, 54, 78}, 17: {30, 46.5, 73}, 21: {21, 28, 44.5},
	}
	sum := 0.0
	for at, hours := range table {
		for i, h := range hours {
			s := raw(t, lot(t, "barley"))
			schedule(t, &s, at, h)
			off := 100*s.Moisture() - []float64{40, 43, 46}[i]
			assert.Less(t, math.Abs(off), 2.0, "%v °C, %v h", at, h)
			sum += off * off
		}
	}
	rms := math.Sqrt(sum / 12)
	t.Logf("%.2f points rms", rms)
	assert.Less(t, rms, 1.0)
}

// Canadian Barley Malting and Brewing Technical Guide, ch. 4; seen: 12–18 °C,
// soak 6–10 h to 30–35 %, air 8–12, soak 6–10, air 6–8, soak 2–4 to 43–45 %,
// chit over 80 %. The middle of each at 15 °C.
func TestPublishedScheduleLandsInItsBands(t *testing.T) {
	s := raw(t, lot(t, "barley"))
	schedule(t, &s, 15, 8)
	t.Logf("first soak %.2f %%", 100*s.Moisture())
	assert.GreaterOrEqual(t, s.Moisture(), 0.30)
	assert.LessOrEqual(t, s.Moisture(), 0.35)
	rest := raw(t, lot(t, "barley"))
	for i, h := range []float64{8, 10, 8, 7, 3} { // its soaks with air blown through
		if i%2 == 0 {
			require.NoError(t, rest.Soak(h*hour, steep.Water{T: 15, Aerated: true}))
		} else {
			require.NoError(t, rest.Rest(h*hour, steep.Air{T: 15, RH: 0.9}))
		}
	}
	b := rest.Batch()
	t.Logf("cast %.2f %%, chit %.3f, lost %.2f %%", 100*rest.Moisture(), b.Chitted, 100*(1-b.Dry/b.Lot.DryMass))
	assert.GreaterOrEqual(t, rest.Moisture(), 0.43)
	assert.LessOrEqual(t, rest.Moisture(), 0.45)
	assert.Greater(t, b.Chitted, 0.80)
}

// MEBAK micromalting, from memory: 14.5 °C, 5 h wet, 19 h air, 4 h wet, 20 h
// air, then wet to 45 %, which is reached on day 3.
func TestMicromaltingSteepReachesItsMoistureOnTheThirdDay(t *testing.T) {
	s := raw(t, lot(t, "barley"))
	schedule(t, &s, 14.5, 5, 19, 4, 20)
	hours := 48.0
	for s.Moisture() < 0.45 && hours < 200 {
		require.NoError(t, s.Soak(0.25*hour, steep.Water{T: 14.5}))
		hours += 0.25
	}
	t.Logf("45 %% after %.2f h", hours)
	assert.Greater(t, hours, 48.0)
	assert.LessOrEqual(t, hours, 72.0)
}

// Heriot-Watt ICBD teaching slides, "The effect of steeping time on water
// uptake by barley"; seen: 23.2 % after five minutes at 18 °C. The first
// moisture is not given. From 14 % the model gives 23.3; from 12 % it gives
// 21.7, because husk and film together hold 0.14 kg/kg, which the steeping
// table above and the weighings below ask for.
func TestHuskAndFilmFillInMinutes(t *testing.T) {
	l := lot(t, "barley")
	l.Moisture0 = 0.14 / 0.86
	s := raw(t, l)
	require.NoError(t, s.Soak(300, steep.Water{T: 18}))
	assert.InDelta(t, 0.232, s.Moisture(), 0.003)
	s = raw(t, lot(t, "barley"))
	require.NoError(t, s.Soak(300, steep.Water{T: 18}))
	assert.InDelta(t, 0.217, s.Moisture(), 0.001, "the figure measured from 12 %")
}

// Germination index (10 over the mean day, the kernels counted at 24, 48 and 72
// h) of sound barley, 20 °C: 6.7–9.4; handbook, from memory. The dish is kept
// wet by dips of five minutes.
func TestGerminationIndexInTheDish(t *testing.T) {
	s := raw(t, lot(t, "barley"))
	days, before := 0.0, 0.0
	for h := range 72 {
		require.NoError(t, s.Soak(300, steep.Water{T: 20, Aerated: true}))
		require.NoError(t, s.Rest(3300, steep.Air{T: 20, RH: 1}))
		if (h+1)%24 == 0 {
			now := s.Batch().Chitted
			days += (now - before) * float64(h+1) / 24
			before = now
		}
	}
	index := 10 * before / days
	t.Logf("index %.2f, mean %.1f h", index, 24*days/before)
	assert.GreaterOrEqual(t, index, 6.7)
	assert.LessOrEqual(t, index, 9.4)
}

// Each species reaches a usual cast moisture by a usual schedule. Common
// practice, and for sorghum a published laboratory schedule; seen.
func TestOtherGrainsReachTheirCastMoisture(t *testing.T) {
	for _, c := range []struct {
		species   string
		at        float64
		hours     []float64
		low, high float64
	}{
		{"wheat", 15, []float64{6, 10, 5, 8, 2}, 0.41, 0.45},
		{"spelt", 15, []float64{6, 10, 5, 8, 2}, 0.41, 0.45},
		{"rye", 15, []float64{6, 10, 5, 8, 2}, 0.44, 0.48},
		{"triticale", 15, []float64{6, 10, 5, 8, 3}, 0.44, 0.48},
		{"oats", 15, []float64{8}, 0.40, 0.47},
		{"sorghum", 25, []float64{22, 8, 22}, 0.40, 0.44},
		{"millet", 27, []float64{8, 4, 8}, 0.33, 0.45},
		{"maize", 22, []float64{20, 6, 20}, 0.40, 0.46},
		{"buckwheat", 17, []float64{6, 6, 6}, 0.40, 0.47},
	} {
		s := raw(t, lot(t, c.species))
		schedule(t, &s, c.at, c.hours...)
		t.Logf("%s %.1f %%", c.species, 100*s.Moisture())
		assert.GreaterOrEqual(t, s.Moisture(), c.low, c.species)
		assert.LessOrEqual(t, s.Moisture(), c.high, c.species)
	}
}
