package grain_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/air"
	"maltwright/sim/grain"
)

func TestTheTwoBasesUndoEachOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.Float64Range(0, 0.8).Draw(t, "w")
		x, err := grain.DryBasis(w)
		require.NoError(t, err)
		back, err := grain.WetBasis(math.Min(x, 4))
		require.NoError(t, err)
		assert.InDelta(t, w, back, 1e-14)
	})
}

// Published home-malting worked example (Sui Generis Brewing, 2023),
// recomputed; seen: 100 g at 8 %; its weight at 42 %; 120 g of it.
func TestWeightsOfAPublishedExample(t *testing.T) {
	dry := 100 * (1 - 0.08)
	assert.InDelta(t, 92.0, dry, 0.05)
	x, err := grain.DryBasis(0.42)
	require.NoError(t, err)
	assert.InDelta(t, 158.62, dry*(1+x), 0.005)
	w, err := grain.MoistureFromWeight(0.120, 0.092, 0)
	require.NoError(t, err)
	assert.InDelta(t, 0.2333, w, 0.00005)
}

// IRRI Rice Knowledge Bank, moisture calculations; seen: 1000 kg at 25 % dried
// to 14 % weigh 872.09 kg.
func TestWeightAfterDrying(t *testing.T) {
	x, err := grain.DryBasis(0.14)
	require.NoError(t, err)
	assert.InDelta(t, 872.09, 1000*(1-0.25)*(1+x), 0.005)
}

// Arithmetic: malt back at the weight of its raw grain at 12 % holds 12 % only
// when nothing was lost; 16.4 % after 5 %, 19.0 % after 8 % of the dry matter.
func TestOriginalWeightHidesTheLoss(t *testing.T) {
	for lost, want := range map[float64]float64{0: 0.12, 0.05: 0.164, 0.08: 0.190} {
		w, err := grain.MoistureFromWeight(100, 88, lost)
		require.NoError(t, err)
		assert.InDelta(t, want, w, 0.0005, "lost %v", lost)
	}
}

func TestMoistureOutOfRangeIsRefused(t *testing.T) {
	for name, f := range map[string]func() (float64, error){
		"wet basis over 80 %":       func() (float64, error) { return grain.DryBasis(0.81) },
		"negative wet basis":        func() (float64, error) { return grain.DryBasis(-0.01) },
		"dry basis over 4":          func() (float64, error) { return grain.WetBasis(4.1) },
		"not a number":              func() (float64, error) { return grain.WetBasis(math.NaN()) },
		"lost more than half":       func() (float64, error) { return grain.MoistureFromWeight(10, 8, 0.6) },
		"lighter than its dry part": func() (float64, error) { return grain.MoistureFromWeight(7, 8, 0) },
		"no dry matter":             func() (float64, error) { return grain.MoistureFromWeight(7, 0, 0) },
	} {
		_, err := f()
		var out *air.RangeError
		assert.ErrorAs(t, err, &out, name)
	}
}
