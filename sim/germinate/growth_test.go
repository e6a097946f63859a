package germinate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/germinate"
	"maltwright/sim/grain"
)

// cast is dry kg of the species just chitted (half its kernels), at the wet-basis
// moisture w.
func cast(t testing.TB, species string, dry, w float64) grain.Batch {
	t.Helper()
	p, err := grain.Of(species)
	require.NoError(t, err)
	b, err := grain.NewBatch(grain.LotOf(p, dry, 0.12/0.88))
	require.NoError(t, err)
	b.Water = dry * w / (1 - w)
	b.Clock = p.Chit
	b.Chitted = 0.5 * b.Lot.Germination
	return b
}

func piece(t testing.TB, b grain.Batch, area, at float64) germinate.Piece {
	t.Helper()
	p, err := germinate.New(b, b.Lot.Profile.Malt, germinate.Floor{Area: area}, at)
	require.NoError(t, err)
	return p
}

// steady is a damp room in which a bed is held at just t °C.
func steady(t float64) germinate.Room {
	return germinate.Room{T: t, RH: 0.98, Hold: &germinate.Band{Low: t, High: t}, Heater: 1e6, Cooler: 1e6}
}

// daysTo holds the bed at t °C until the mean acrospire has the length.
func daysTo(t *testing.T, species string, w, at, length float64) float64 {
	p := piece(t, cast(t, species, 20, w), 1, at)
	for p.Acrospire() < length && p.Age() < 20*24*hour {
		require.NoError(t, p.Advance(hour, steady(at)))
	}
	return p.Age() / (24 * hour)
}

// Handbook, from memory: days on the floor to an acrospire of three quarters to
// full. The model's own two marks lie further apart than the handbook's days at
// 14 °C and above; the middle between them must fall inside.
func TestDaysOnTheFloorFollowTheHandbook(t *testing.T) {
	for at, days := range map[float64][2]float64{12: {7, 9}, 14: {6, 7}, 16: {5, 6}, 18: {4, 5}} {
		from, to := daysTo(t, "barley", 0.45, at, 0.75), daysTo(t, "barley", 0.45, at, 1)
		t.Logf("%v °C: three quarters after %.1f, full after %.1f days", at, from, to)
		assert.GreaterOrEqual(t, (from+to)/2, days[0], "%v °C", at)
		assert.LessOrEqual(t, (from+to)/2, days[1], "%v °C", at)
	}
}

// Other grains come to their mark inside their days: rye 5 d at 16 °C (NDSU
// 2018, Fermentation 4:50; seen), oats 8 d at 17 °C (Muñoz-Insa et al. 2011;
// seen), sorghum 5 d at 25–28 °C (published laboratory study; seen), pearl
// millet 3–5 d at 25–30 °C (CSIR; seen); the others by common practice.
func TestOtherGrainsGrowInTheirDays(t *testing.T) {
	for _, c := range []struct {
		species      string
		w, at        float64
		least, most  float64
		acrospire    float64
		publishedFor string
	}{
		{"rye", 0.45, 16, 3, 5, 0.75, "5 d"},
		{"oats", 0.46, 17, 4, 8, 1, "8 d"},
		{"sorghum", 0.42, 26.5, 3, 5, 1, "5 d"},
		{"millet", 0.40, 27.5, 2.5, 5, 1, "3–5 d"},
		{"wheat", 0.44, 15.5, 4, 6, 0.75, ""},
		{"spelt", 0.44, 15.5, 4, 6, 0.75, ""},
		{"triticale", 0.45, 15.5, 4, 5, 0.75, ""},
		{"maize", 0.43, 25, 3, 10, 1, ""},
		{"buckwheat", 0.44, 17.5, 3, 5, 0.75, ""},
	} {
		days := daysTo(t, c.species, c.w, c.at, c.acrospire)
		t.Logf("%s at %v °C: acrospire %v after %.1f days", c.species, c.at, c.acrospire, days)
		assert.GreaterOrEqual(t, days, c.least, c.species)
		assert.LessOrEqual(t, days, c.most, c.species)
	}
}

// Handbook (Narziß), from memory: 5.8 % of the dry matter respired in six days
// at 16 °C.
func TestRespirationLossOfAUsualGermination(t *testing.T) {
	p := piece(t, cast(t, "barley", 20, 0.45), 1, 16)
	require.NoError(t, p.Advance(6*24*hour, steady(16)))
	t.Logf("%.2f %%", 100*p.RespirationLoss())
	assert.InDelta(t, 0.058, p.RespirationLoss(), 0.0006)
	assert.Equal(t, grain.Chalky, p.Rub())
}

// Handbook, from memory: one tonne gives about 39 m³ of carbon dioxide in five
// days (at 20 °C and 101,325 Pa, 1.83 kg/m³).
func TestCarbonDioxideOfATonne(t *testing.T) {
	p := piece(t, cast(t, "barley", 880, 0.45), 25, 16)
	require.NoError(t, p.Advance(5*24*hour, steady(16)))
	volume := p.CO2() / 1.83
	t.Logf("%.0f m³", volume)
	assert.InDelta(t, 39, volume, 4)
}

// Onofri et al. 2018; seen: final germination 95 % at 15, 89 at 25, 77 at 30,
// 19 at 35 and none at 40 °C, here against the best of them.
func TestWarmBedsGerminateFewer(t *testing.T) {
	for at, share := range map[float64]float64{15: 0.95, 25: 0.89, 30: 0.77, 35: 0.19, 40: 0} {
		b := cast(t, "barley", 20, 0.45)
		b.Clock, b.Chitted = 0, 0
		p := piece(t, b, 1, at)
		require.NoError(t, p.Advance(4*24*hour, steady(at)))
		assert.InDelta(t, b.Lot.Germination*share/0.95, p.Chitted(), 0.005, "%v °C", at)
	}
}

func TestABedHeldTooWarmStopsGrowing(t *testing.T) {
	warm, hot := piece(t, cast(t, "barley", 20, 0.45), 1, 25), piece(t, cast(t, "barley", 20, 0.45), 1, 36)
	require.NoError(t, warm.Advance(24*hour, steady(25)))
	require.NoError(t, hot.Advance(24*hour, steady(36)))
	assert.Less(t, hot.Acrospire(), warm.Acrospire()/3)
}

func TestKernelsOfAPieceDiffer(t *testing.T) {
	p := piece(t, cast(t, "barley", 20, 0.45), 1, 16)
	for p.Acrospire() < 0.75 {
		require.NoError(t, p.Advance(hour, steady(16)))
	}
	c := p.Classes()
	t.Logf("none, to 1/4, 1/2, 3/4, 1, over: %.3f", c)
	assert.InDelta(t, 1-p.Chitted(), c[grain.NoGrowth], 1e-12)
	assert.Greater(t, c[grain.ToThreeQuarters], 0.3)
	assert.Greater(t, c[grain.ToFull], 0.3)
	assert.Less(t, c[grain.Overgrown], 0.08)
	b := p.Batch()
	assert.Equal(t, c, b.Classes())
	assert.InDelta(t, 0.75*0.037*20, b.Rootlets(), 0.01)
}
