package grain_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/drying"
	"maltwright/sim/grain"
)

func profile(t testing.TB, name string) grain.Profile {
	t.Helper()
	p, err := grain.Of(name)
	require.NoError(t, err)
	return p
}

func TestEverySpeciesOfTheLanguageHasAProfile(t *testing.T) {
	want := []string{"barley", "wheat", "rye", "oats", "sorghum", "millet", "maize", "buckwheat", "spelt", "triticale"}
	assert.ElementsMatch(t, want, grain.Names())
	for _, name := range grain.Names() {
		_, err := grain.NewBatch(grain.LotOf(profile(t, name), 1, 0.14))
		assert.NoError(t, err, name)
	}
}

// A source has the sorption of barley, wheat, maize and sorghum. The others dry by
// barley's, moved by what is calibrated; bound water goes through kernels of their own
// size: of half the weight, at 2^(2/3) of the rate.
func TestEverySpeciesDriesByWhatIsKnownOfIt(t *testing.T) {
	assert.Equal(t, drying.Malt{}, profile(t, "barley").Malt)
	shifts := map[string]float64{"buckwheat": 0, "oats": -0.01, "rye": 0.005, "triticale": 0.005, "spelt": 0.005, "millet": 0.005}
	for _, name := range grain.Names() {
		p := profile(t, name)
		require.NoError(t, p.Malt.Check(), name)
		k, _, _ := p.Malt.Rate(0, 60)
		barley, _, _ := drying.Malt{}.Rate(0, 60)
		assert.InEpsilon(t, math.Pow(0.045/p.KernelWeight, 2.0/3), k/barley, 1e-9, name)
		if shift, moved := shifts[name]; moved {
			assert.Equal(t, drying.Barley().HendersonK, p.Malt.Cereal.HendersonK, name)
			assert.Equal(t, shift, p.Malt.Shift, name)
		} else {
			assert.Zero(t, p.Malt.Shift, name)
		}
	}
}

func TestUnknownGrainNamesTheKnownOnes(t *testing.T) {
	_, err := grain.Of("rice")
	assert.ErrorContains(t, err, "barley, wheat")
}

func TestChangingAProfileLeavesTheTableAlone(t *testing.T) {
	p := profile(t, "barley")
	p.Marks[0], p.Uptake = 1, 9
	assert.NotEqual(t, p, profile(t, "barley"))
}

func TestABrokenLotIsRefusedFieldByField(t *testing.T) {
	good := grain.LotOf(profile(t, "barley"), 5, 0.14)
	for name, spoil := range map[string]func(*grain.Lot){
		"no profile":         func(l *grain.Lot) { l.Profile = grain.Profile{} },
		"no grain":           func(l *grain.Lot) { l.DryMass = 0 },
		"soaking wet":        func(l *grain.Lot) { l.Moisture0 = 0.6 },
		"kernels of a gram":  func(l *grain.Lot) { l.KernelWeight = 1.5 },
		"more than all grow": func(l *grain.Lot) { l.Germination = 1.01 },
		"uptake":             func(l *grain.Lot) { l.UptakeFactor = -1 },
		"pace":               func(l *grain.Lot) { l.GrowthFactor = 9 },
		"breath":             func(l *grain.Lot) { l.RespirationFactor = 9 },
		"marks fall":         func(l *grain.Lot) { l.Profile.Marks[2] = 1 },
		"best below base":    func(l *grain.Lot) { l.Profile.BestT = -9 },
		"dry above full":     func(l *grain.Lot) { l.Profile.DryStop = 0.5 },
		"hot before cold":    func(l *grain.Lot) { l.Profile.Germinates[3].T = 1 },
	} {
		l := good
		spoil(&l)
		_, err := grain.NewBatch(l)
		assert.Error(t, err, name)
	}
}

func TestALotIsUsualWhereNothingElseIsSaid(t *testing.T) {
	b, err := grain.NewBatch(grain.LotOf(profile(t, "oats"), 5, 0.14))
	require.NoError(t, err)
	assert.Equal(t, 0.034, b.Lot.KernelWeight)
	assert.Equal(t, grain.DefaultGermination, b.Lot.Germination)
	assert.Equal(t, 1.0, b.Lot.GrowthFactor)
	assert.InDelta(t, 5*1.14, b.Mass(), 1e-12)
	assert.Equal(t, b.Lot.DryMass, b.Dry)
}

// Geometry: eight times the weight is twice the thickness, so a quarter of the
// speed.
func TestBigKernelsDrinkSlower(t *testing.T) {
	l := grain.LotOf(profile(t, "barley"), 1, 0.14)
	l.KernelWeight = 8 * 0.045
	require.NoError(t, l.Check())
	assert.InDelta(t, 0.25, l.UptakeSpeed(), 1e-12)
}
