package germinate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/germinate"
)

func held(t *testing.T, dry float64, room germinate.Room) germinate.Piece {
	p := piece(t, cast(t, "barley", dry, 0.45), 1, 15)
	for p.Age() < 5*24*hour {
		require.NoError(t, p.Advance(600, room))
		require.GreaterOrEqual(t, p.T(), room.Hold.Low-1e-6)
		require.LessOrEqual(t, p.T(), room.Hold.High+1e-6)
		if p.SinceTurn() >= 8*hour-1 {
			p.Turn()
		}
	}
	return p
}

func TestAPieceCanBeHeldInItsBand(t *testing.T) {
	room := cellar()
	room.Hold = &germinate.Band{Low: 14, High: 17}
	thin, deep := held(t, 31, room), held(t, 120, room)
	t.Logf("thin %+v", thin.Holding())
	t.Logf("deep %+v", deep.Holding())
	assert.True(t, thin.HoldPlausible(), "turning does it for a floor of usual depth")
	assert.False(t, deep.HoldPlausible(), "it does not for a heap")
	h := deep.Holding()
	assert.Greater(t, h.Beyond, 0.0)
	assert.Greater(t, h.Removed, h.Beyond)
	assert.Greater(t, h.Peak, 100.0)
}

func TestAWarmRoomCannotHoldACoolBed(t *testing.T) {
	room := germinate.Room{T: 22, RH: 0.9, Hold: &germinate.Band{Low: 14, High: 17}}
	p := held(t, 20, room)
	assert.False(t, p.HoldPlausible())
	assert.Greater(t, p.Holding().Beyond, 0.5*p.Holding().Removed)
}

func TestAColdRoomNeedsHeat(t *testing.T) {
	room := germinate.Room{T: 4, RH: 0.8, Hold: &germinate.Band{Low: 14, High: 17}}
	p := held(t, 8, room)
	assert.Zero(t, p.Holding().Removed)
	assert.Positive(t, p.Holding().Short)
	assert.Less(t, p.Holding().Short, p.Holding().Added)
	assert.False(t, p.HoldPlausible())
}

// Common practice: a few kilogrammes on a wide floor are heaped to keep warm in
// a damp room some degrees cooler.
func TestAThinBedCanBeHeapedToKeepWarm(t *testing.T) {
	room := germinate.Room{T: 12, RH: 0.97, Hold: &germinate.Band{Low: 14, High: 17}}
	p := held(t, 6.6, room)
	t.Logf("%+v of %.0f J respired", p.Holding(), p.Energy().Respired)
	assert.Positive(t, p.Holding().Added)
	assert.True(t, p.HoldPlausible())
}

func TestAWideBandAsksForNothing(t *testing.T) {
	room := cellar()
	free := piece(t, cast(t, "barley", 20, 0.45), 1, 15)
	band := free
	require.NoError(t, free.Advance(4*24*hour, room))
	room.Hold = &germinate.Band{Low: 1, High: 40}
	require.NoError(t, band.Advance(4*24*hour, room))
	assert.InDelta(t, free.T(), band.T(), 1e-9)
	assert.Equal(t, germinate.Holding{}, band.Holding())
	assert.True(t, band.HoldPlausible())
}

// Common practice: a piece is brought to its temperature by about one kelvin an
// hour.
func TestABedOutsideItsBandIsBroughtBackSlowly(t *testing.T) {
	p := piece(t, cast(t, "barley", 20, 0.45), 1, 8)
	room := germinate.Room{T: 8, RH: 0.95, Hold: &germinate.Band{Low: 14, High: 17}}
	require.NoError(t, p.Advance(3*hour, room))
	assert.InDelta(t, 11, p.T(), 1e-6)
	require.NoError(t, p.Advance(6*hour, room))
	assert.InDelta(t, 14, p.T(), 1e-6)
	warm := piece(t, cast(t, "barley", 20, 0.45), 1, 22)
	room.T = 22
	require.NoError(t, warm.Advance(2*hour, room))
	assert.InDelta(t, 20, warm.T(), 1e-6)
}
