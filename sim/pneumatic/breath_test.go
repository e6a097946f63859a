package pneumatic_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/grain"
	"maltwright/sim/pneumatic"
)

// A box that stands breathes as before until its pores are empty, half an hour or so, and then
// by what diffuses in. No more is burnt than both bring.
func TestABoxThatStandsBreathesByItsPoresAndThenByDiffusion(t *testing.T) {
	b := settled(t, blown(500, 13, 0.98))
	stand := pneumatic.Supply{Room: hall(), T: 13}
	rate := func() float64 {
		before := b.Ledger().Burnt
		require.NoError(t, b.Advance(300, stand))
		return (b.Ledger().Burnt - before) / 300
	}
	first := rate()
	respired := b.Batch().Respired
	require.NoError(t, b.Advance(2*hour, stand))
	later := rate()
	t.Logf("burns %.2f g/s, two hours later %.2f", 1000*first, 1000*later)
	assert.Less(t, later, 0.5*first)
	assert.Greater(t, later, 0.1*first)
	assert.Positive(t, b.Batch().Debt)
	took := grain.StarchO2 * (b.Batch().Respired - respired + 300*first)
	lot := b.Batch().Lot
	area := lot.BedVolume(b.X(), b.Clock()) / b.Depth()
	reach := b.OxygenDepth()
	most := grain.PoreOxygen*b.Depth()*area + (2*hour+600)*2*grain.PoreSupply*area/reach*1.2 // its flux at the face is 2·D·ρ/z
	assert.Less(t, took, most)
	b.Turn()
	assert.Greater(t, rate(), 2*later, "a turn airs it")
}

// Air by the clock that comes again before the pores are empty lets all of the bed grow.
func TestAFanThatComesAgainSoonStarvesNothing(t *testing.T) {
	s := blown(500, 13, 0.98)
	s.Run.Clock = &pneumatic.Clock{Every: 1200, On: 600}
	b := settled(t, s)
	assert.Zero(t, b.Batch().Debt)
}
