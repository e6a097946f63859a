package grain_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/grain"
)

// The bed swells by its water, hence in proportion on the dry basis and not on the wet one.
func TestTheBedSwellsByItsWater(t *testing.T) {
	p, err := grain.Of("barley")
	require.NoError(t, err)
	l := grain.LotOf(p, 880, 0.12/0.88)
	full := 0.45 / 0.55
	assert.InDelta(t, 1000/680.0, l.BedVolume(l.Moisture0, 0), 1e-9)
	assert.InDelta(t, 1.4*1000/680.0, l.BedVolume(full, 0), 1e-9)
	half := (l.Moisture0 + full) / 2 // 32 %, and not 28.5 half way on the wet basis
	assert.InDelta(t, 1.2*1000/680.0, l.BedVolume(half, 0), 1e-9)
	assert.InDelta(t, 1.4*1.15*1000/680.0, l.BedVolume(full, p.GrownTo(1)), 1e-9)
}
