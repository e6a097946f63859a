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

func TestDryBasisIsWaterOverDryMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.Float64Range(0, 0.8).Draw(t, "w")
		x, err := grain.DryBasis(w)
		require.NoError(t, err)
		assert.InDelta(t, w, x/(1+x), 1e-14)
	})
}

// Published home-malting worked example (Sui Generis Brewing, 2023),
// recomputed; seen: 100 g at 8 %; its weight at 42 %.
func TestWeightsOfAPublishedExample(t *testing.T) {
	dry := 100 * (1 - 0.08)
	assert.InDelta(t, 92.0, dry, 0.05)
	x, err := grain.DryBasis(0.42)
	require.NoError(t, err)
	assert.InDelta(t, 158.62, dry*(1+x), 0.005)
}

// IRRI Rice Knowledge Bank, moisture calculations; seen: 1000 kg at 25 % dried
// to 14 % weigh 872.09 kg.
func TestWeightAfterDrying(t *testing.T) {
	x, err := grain.DryBasis(0.14)
	require.NoError(t, err)
	assert.InDelta(t, 872.09, 1000*(1-0.25)*(1+x), 0.005)
}

func TestMoistureOutOfRangeIsRefused(t *testing.T) {
	for name, f := range map[string]func() (float64, error){
		"wet basis over 80 %": func() (float64, error) { return grain.DryBasis(0.81) },
		"negative wet basis":  func() (float64, error) { return grain.DryBasis(-0.01) },
		"not a number":        func() (float64, error) { return grain.DryBasis(math.NaN()) },
	} {
		_, err := f()
		var out *air.RangeError
		assert.ErrorAs(t, err, &out, name)
	}
}
