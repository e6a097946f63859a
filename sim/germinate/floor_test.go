package germinate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/germinate"
)

// onFloor is the warmest and the last moisture of so many kg of dry matter on a square
// metre, turned every 6 h for six days in a room of 12 °C.
func onFloor(t *testing.T, dry float64, lifts bool) (warmest, moisture float64) {
	t.Helper()
	p := piece(t, cast(t, "barley", dry, 0.44), 1, 12)
	for range 24 {
		if p.Advance(6*hour, germinate.Room{T: 12, RH: 0.97, Cover: 1, Lifts: lifts}) != nil { // beyond 60 °C
			break
		}
		p.Turn()
	}
	return p.Highest(), p.Moisture()
}

// Common practice: a floor of 10 to 12 cm that is turned stands at 15 to 20 °C and keeps
// its 43 to 45 %; at its peak it is thinned, as twice of that is lost however it is turned.
// 40 kg of dry matter lie 9 cm deep when they are cast and 13 when they are grown.
func TestATurnedFloorStandsAndOneTwiceAsDeepRunsAway(t *testing.T) {
	for _, dry := range []float64{30, 35, 40} {
		warmest, moisture := onFloor(t, dry, true)
		assert.Less(t, warmest, 28.0, "%g kg/m²", dry)
		assert.InDelta(t, 0.44, moisture, 0.01, "%g kg/m²", dry)
	}
	warmest, _ := onFloor(t, 80, true)
	assert.Greater(t, warmest, 35.0, "two decimetres")
}

// A cover that is lifted lets vapour off a deep piece, which is the cooler for it, and stays
// on one that dries.
func TestACoverIsLiftedOffAPieceThatGrowsWetter(t *testing.T) {
	shut, wetter := onFloor(t, 40, false)
	open, kept := onFloor(t, 40, true)
	assert.Less(t, open, shut-1)
	assert.Greater(t, wetter, 0.455)
	assert.InDelta(t, 0.44, kept, 0.005)
	thin, dry := onFloor(t, 6, true)
	same, asDry := onFloor(t, 6, false)
	require.Less(t, dry, 0.44)
	assert.InDelta(t, same, thin, 1e-9)
	assert.InDelta(t, asDry, dry, 1e-12)
}

// A piece that was sprinkled is kept at what it was sprinkled to.
func TestSprinklingRaisesTheMoistureThatIsKept(t *testing.T) {
	p := piece(t, cast(t, "barley", 40, 0.42), 1, 16)
	require.NoError(t, p.Sprinkle(3, 16))
	to := p.Moisture()
	room := germinate.Room{T: 12, RH: 0.97, Cover: 1, Lifts: true, Hold: band(), Cooler: 1e4}
	require.NoError(t, p.Advance(4*24*hour, room))
	assert.InDelta(t, to, p.Moisture(), 0.007)
}
