package grain_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/grain"
)

func TestGrownToIsWhereTheAcrospireIsSoLong(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		name := rapid.SampledFrom([]string{"barley", "wheat", "sorghum", "maize"}).Draw(r, "species")
		p, err := grain.Of(name)
		require.NoError(r, err)
		length := rapid.Float64Range(0.001, 1).Draw(r, "length")
		assert.InDelta(r, length, p.Acrospire(p.GrownTo(length)), 1e-9)
	})
}

func TestGreenMaltHasGrownAndLostNothing(t *testing.T) {
	p, err := grain.Of("barley")
	require.NoError(t, err)
	b, err := grain.Grown(grain.LotOf(p, 10, 0.14), 0.8, 0.75)
	require.NoError(t, err)
	assert.InDelta(t, 0.8/1.8, b.Moisture(), 1e-12)
	assert.InDelta(t, 0.75, b.Acrospire(), 1e-9)
	assert.Equal(t, grain.DefaultGermination, b.Chitted)
	assert.Equal(t, b.Lot.DryMass, b.Dry, "what it lost it lost before")
	_, err = grain.Grown(grain.LotOf(p, 10, 0.14), 5, 0.75)
	assert.Error(t, err)
}
