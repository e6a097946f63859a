package germinate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/germinate"
	"maltwright/sim/grain"
)

// still is a room that holds the bed at t °C whatever that takes.
func still(at float64) germinate.Room {
	return germinate.Room{T: at, RH: 0.98, Hold: &germinate.Band{Low: at, High: at}, Heater: 1e6, Cooler: 1e6}
}

// A bed deeper than oxygen comes grows and burns by the share that it reaches, both alike.
func TestADeepStillBedGrowsAndBurnsByTheShareThatOxygenReaches(t *testing.T) {
	const at = 18
	b := cast(t, "barley", 200, 0.45)
	shallow, deep := piece(t, b, 10, at), piece(t, b, 0.5, at)
	before := shallow.Batch()
	reach := grain.OxygenReach(grain.OxygenDemand(&before, at))
	share := reach / deep.Depth()
	t.Logf("oxygen reaches %.2f m of %.2f", reach, deep.Depth())
	require.Less(t, share, 0.7)
	for _, p := range []*germinate.Piece{&shallow, &deep} {
		require.NoError(t, p.Advance(600, still(at)))
	}
	grew := func(p *germinate.Piece) float64 { return p.Clock() - before.Clock }
	burnt := func(p *germinate.Piece) float64 { return p.Batch().Respired }
	assert.InEpsilon(t, share*grew(&shallow), grew(&deep), 0.01)
	assert.InEpsilon(t, share*burnt(&shallow), burnt(&deep), 0.01)
	assert.Positive(t, deep.Batch().Debt)
	assert.Zero(t, shallow.Batch().Debt)
}

func TestAnOpenUndersideLetsOxygenInAsWell(t *testing.T) {
	b := cast(t, "barley", 200, 0.45)
	closed := piece(t, b, 0.5, 18)
	open, err := germinate.New(b, b.Lot.Profile.Malt, germinate.Floor{Area: 0.5, Mesh: true}, 18)
	require.NoError(t, err)
	require.NoError(t, closed.Advance(600, still(18)))
	require.NoError(t, open.Advance(600, still(18)))
	assert.InEpsilon(t, 2*closed.Batch().Respired, open.Batch().Respired, 0.01)
}

// What a steep left owing goes with the batch, slows growth and breath alike and is worked off.
func TestAPieceWorksOffWhatItOwes(t *testing.T) {
	free := cast(t, "barley", 20, 0.45)
	owing := free
	owing.Debt = 0.3
	a, b := piece(t, free, 1, 16), piece(t, owing, 1, 16)
	require.NoError(t, a.Advance(60, still(16)))
	require.NoError(t, b.Advance(60, still(16)))
	assert.InEpsilon(t, 0.7*(a.Clock()-free.Clock), b.Clock()-free.Clock, 1e-3)
	assert.InEpsilon(t, 0.7*a.Batch().Respired, b.Batch().Respired, 1e-3)
	require.NoError(t, b.Advance(28*hour, still(16)))
	assert.Less(t, b.Batch().Debt, 0.03)
	assert.Equal(t, b.Batch().Debt, again(t, b).Batch().Debt, "on the next floor too")
}

func again(t *testing.T, p germinate.Piece) *germinate.Piece {
	t.Helper()
	next := piece(t, p.Batch(), 2, 16)
	return &next
}

// Whoever holds a band stops turning at its edge.
func TestATurnStopsAtTheEdgeOfTheBand(t *testing.T) {
	p := piece(t, cast(t, "barley", 40, 0.45), 1, 15)
	room := germinate.Room{T: 2, RH: 0.98, Hold: &germinate.Band{Low: 14.9, High: 16}, Heater: 1e6}
	require.NoError(t, p.Advance(hour, room))
	before := p.T()
	p.Turn()
	assert.Greater(t, before-0.20*(before-2), 0.0)
	assert.Less(t, before-0.20*(before-2), 14.9, "a fifth of the way to the room would leave the band")
	assert.InDelta(t, 14.9, p.T(), 1e-6)
}

// The mean of the bed is held in the band; a thermometer in its middle reads more.
func TestTheBandIsHeldOnTheMean(t *testing.T) {
	p := piece(t, cast(t, "barley", 60, 0.45), 1, 16)
	room := still(16)
	room.T = 8
	require.NoError(t, p.Advance(48*hour, room))
	assert.InDelta(t, 16, p.T(), 1e-6)
	assert.InDelta(t, 16+(p.CoreT()-p.FaceT())/3, p.CoreT(), 1e-9, "by a third of its excess")
	assert.Greater(t, p.CoreT(), 16.5)
}
