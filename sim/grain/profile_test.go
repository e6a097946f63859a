package grain_test

import (
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

// Only barley's figures of drying are known. Of the others their sorption stands
// higher or lower by what is calibrated.
func TestEverySpeciesDriesByTheFiguresOfBarley(t *testing.T) {
	shifts := map[string]float64{"barley": 0, "buckwheat": 0, "oats": -0.01}
	for _, name := range grain.Names() {
		shift, known := shifts[name]
		if !known {
			shift = 0.005
		}
		assert.Equal(t, drying.Malt{Shift: shift}, profile(t, name).Malt, name)
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
		"corns of a gram":    func(l *grain.Lot) { l.CornWeight = 1.5 },
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
	assert.Equal(t, 0.034, b.Lot.CornWeight)
	assert.Equal(t, grain.DefaultGermination, b.Lot.Germination)
	assert.Equal(t, 1.0, b.Lot.GrowthFactor)
	assert.InDelta(t, 5*1.14, b.Mass(), 1e-12)
	assert.Equal(t, b.Lot.DryMass, b.Dry)
}

// Geometry: eight times the weight is twice the thickness, so a quarter of the
// speed.
func TestBigCornsDrinkSlower(t *testing.T) {
	l := grain.LotOf(profile(t, "barley"), 1, 0.14)
	l.CornWeight = 8 * 0.045
	require.NoError(t, l.Check())
	assert.InDelta(t, 0.25, l.UptakeSpeed(), 1e-12)
}
