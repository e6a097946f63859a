package grain_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/grain"
)

// Onofri et al. 2018; seen: final germination of barley over temperature.
func TestFinalGerminationOfBarley(t *testing.T) {
	p := profile(t, "barley")
	for at, want := range map[float64]float64{15: 0.95, 25: 0.89, 30: 0.77, 35: 0.19, 40: 0} {
		assert.InDelta(t, want, p.FinalGermination(at), 0.005, "%v °C", at)
	}
	assert.Zero(t, p.FinalGermination(41))
	assert.Zero(t, p.FinalGermination(-1))
}

func TestGrowthStopsOutsideItsLimits(t *testing.T) {
	for _, name := range grain.Names() {
		p := profile(t, name)
		assert.Zero(t, p.WarmFactor(p.BaseT), name)
		assert.Zero(t, p.WarmFactor(p.CeilingT), name)
		assert.Zero(t, p.WarmFactor(math.NaN()), name)
		assert.Zero(t, p.MoistFactor(p.DryStop, p.Chit), name)
		assert.Equal(t, 1.0, p.MoistFactor(p.MoistFull, p.Chit), name)
		assert.Equal(t, p.BestT-p.BaseT, p.WarmFactor(p.BestT), name)
	}
}

func TestAcrospireStandsAtItsMarks(t *testing.T) {
	for _, name := range grain.Names() {
		p := profile(t, name)
		for k, mark := range p.Marks {
			assert.InDelta(t, float64(k+1)/4, p.Acrospire(p.Chit+mark), 1e-12, name)
		}
		assert.Zero(t, p.Acrospire(p.Chit))
	}
}

func TestClassesShareOutAllKernels(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, err := grain.Of(rapid.SampledFrom(grain.Names()).Draw(t, "grain"))
		require.NoError(t, err)
		clock := rapid.Float64Range(0, 2e4).Draw(t, "clock")
		chitted := 0.97 * p.Due(clock)
		sum := 0.0
		for _, share := range p.Classes(clock, chitted) {
			require.GreaterOrEqual(t, share, -1e-15)
			sum += share
		}
		require.InDelta(t, 1, sum, 1e-12)
	})
}

func TestTheMiddleKernelSplitsTheClasses(t *testing.T) {
	p := profile(t, "barley")
	c := p.Classes(p.Chit+p.Marks[2], p.Due(p.Chit+p.Marks[2]))
	assert.InDelta(t, 0.5, c[grain.ToFull]+c[grain.Overgrown], 1e-9)
	assert.Less(t, c[grain.Overgrown], 0.08, "common practice: few overgrown at a mean of three quarters")
}

func TestGrowthNeverGoesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, err := grain.Of(rapid.SampledFrom(grain.Names()).Draw(t, "grain"))
		require.NoError(t, err)
		a := rapid.Float64Range(0, 5000).Draw(t, "clock")
		b := a + rapid.Float64Range(0, 5000).Draw(t, "more")
		require.LessOrEqual(t, p.Acrospire(a), p.Acrospire(b))
		require.LessOrEqual(t, p.Modification(a), p.Modification(b))
		require.LessOrEqual(t, p.Rootlets(a), p.Rootlets(b))
		require.LessOrEqual(t, grain.RubAt(p.Modification(a)), grain.RubAt(p.Modification(b)))
		past := func(clock float64) float64 { c := p.Classes(clock, p.Due(clock)); return c[grain.Overgrown] }
		require.LessOrEqual(t, past(a), past(b)+1e-12)
	})
}

func TestRubWordsFollowTheIndex(t *testing.T) {
	for index, want := range map[float64]string{0: "gummy", 0.54: "gummy", 0.55: "gritty", 0.84: "gritty", 0.85: "chalky", 1: "chalky"} {
		assert.Equal(t, want, grain.RubAt(index).String(), "%v", index)
	}
	for _, r := range []grain.Rub{grain.Gummy, grain.Gritty, grain.Chalky} {
		assert.Equal(t, r, grain.RubAt(grain.ModificationAt(r)))
	}
	p := profile(t, "barley")
	assert.InDelta(t, 0.85, p.Modification(p.Chit+p.Marks[2]), 0.001, "chalky at three quarters")
	assert.Equal(t, "not a rub word", grain.Rub(9).String())
	assert.Equal(t, 0.85, grain.ModificationAt(9))
}
