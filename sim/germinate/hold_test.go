package germinate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/germinate"
	"maltwright/sim/grain"
)

// keptIn keeps so many kg of dry matter on a square metre for some days in a room,
// turned every eight hours, and hands it to look at every ten minutes.
func keptIn(t *testing.T, dry, days float64, room germinate.Room, look func(*germinate.Piece)) germinate.Piece {
	return keptTurned(t, dry, days, 8, room, look)
}

// keptTurned keeps it turned at another interval, h.
func keptTurned(t *testing.T, dry, days, every float64, room germinate.Room, look func(*germinate.Piece)) germinate.Piece {
	p := piece(t, cast(t, "barley", dry, 0.45), 1, 15)
	for p.Age() < days*24*hour {
		require.NoError(t, p.Advance(600, room))
		look(&p)
		if p.SinceTurn() >= every*hour-1 {
			p.Turn()
		}
	}
	return p
}

// inBand fails where a piece is out of its band by more than so many K.
func inBand(t *testing.T, b *germinate.Band, by float64) func(*germinate.Piece) {
	return func(p *germinate.Piece) {
		require.GreaterOrEqual(t, p.T(), b.Low-by)
		require.LessOrEqual(t, p.T(), b.High+by)
	}
}

func band() *germinate.Band { return &germinate.Band{Low: 14, High: 17} }

func TestTurningHoldsAPieceOfUsualDepth(t *testing.T) {
	room := cellar()
	room.Hold = band()
	p := keptIn(t, 35, 5, room, inBand(t, room.Hold, 1))
	h := p.Holding()
	assert.Zero(t, h.Cooled)
	assert.Zero(t, h.Warmed)
}

// A hold cools by no turn but those that are made: without a cooler a bed that is too
// warm fares as one that nobody holds.
func TestAHoldCoolsByItsTurnsOnly(t *testing.T) {
	warmest := 0.0
	for _, every := range []float64{4, 8, 24} {
		room := germinate.Room{T: 13, RH: 0.97}
		free := keptTurned(t, 25, 5, every, room, func(*germinate.Piece) {})
		room.Hold = &germinate.Band{Low: 0, High: 15}
		held := keptTurned(t, 25, 5, every, room, func(*germinate.Piece) {})
		t.Logf("every %v h: %.2f °C free, %.2f °C held", every, free.Highest(), held.Highest())
		assert.InDelta(t, free.Highest(), held.Highest(), 0.01)
		assert.InDelta(t, 0, held.Holding().Removed, 1)
		assert.Greater(t, held.Highest(), warmest+0.05, "the fewer turns the warmer")
		warmest = held.Highest()
	}
}

// What turning cannot take a cooler takes, and without one the piece gets warm.
func TestADeepPieceIsHeldByACoolerOnly(t *testing.T) {
	room := cellar()
	room.Hold = band()
	warm := keptIn(t, 120, 5, room, func(*germinate.Piece) {})
	assert.Greater(t, warm.Highest(), 25.0)
	assert.Zero(t, warm.Holding().Cooled)
	room.Cooler = 2000
	cool := keptIn(t, 120, 5, room, inBand(t, room.Hold, 1e-6))
	h := cool.Holding()
	assert.InEpsilon(t, h.Removed, h.Cooled, 1e-6)
	still := keptTurned(t, 120, 5, 1000, room, inBand(t, room.Hold, 1e-6))
	assert.Greater(t, still.Holding().Cooled, h.Cooled, "the turns do their part")
	assert.Zero(t, h.Warmed)
}

func TestAWarmRoomCannotHoldACoolBed(t *testing.T) {
	room := germinate.Room{T: 22, RH: 0.9, Hold: band()}
	p := keptIn(t, 20, 5, room, func(*germinate.Piece) {})
	assert.Greater(t, p.T(), 22.0)
}

// Own calculation: a bed of 4 kg of dry matter on the square metre breathes some 8 W
// on its third day, and its two faces lose 16 W for each kelvin: it cannot be a kelvin
// warmer than its room but by being heaped, to nine tenths at the most.
func TestAColdRoomChillsAThinBed(t *testing.T) {
	room := germinate.Room{T: 4, RH: 0.99, Cover: 1, Hold: band()}
	coldest, pace := math.Inf(1), 0.0
	p := keptIn(t, 4, 5, room, func(p *germinate.Piece) { coldest, pace = min(coldest, p.T()), p.Pace(p.T()) })
	assert.Less(t, coldest, 13.0)
	assert.Greater(t, coldest, 4.0)
	assert.Less(t, pace, p.Pace(14))
	warm := keptIn(t, 4, 5, germinate.Room{T: 14, RH: 0.99, Cover: 1, Hold: band()}, func(*germinate.Piece) {})
	assert.Less(t, p.Clock(), warm.Clock(), "in the cold it grows slower")
	assert.Less(t, p.CO2(), warm.CO2(), "and breathes less")
}

// In a frozen shed a bed that nobody heats comes to freeze, which the model refuses.
func TestAFrozenShedFreezesTheBed(t *testing.T) {
	room := germinate.Room{T: -6, RH: 0.99, Cover: 1, Hold: band()}
	p := piece(t, cast(t, "barley", 4, 0.45), 1, 13)
	err := error(nil)
	for p.Age() < 5*24*hour && err == nil {
		err = p.Advance(600, room)
	}
	require.ErrorContains(t, err, "bed temperature")
	assert.Less(t, p.T(), 0.0)
}

// A heater that is strong enough keeps the bed where it is asked to be, and gives just
// what room and respiration leave wanting.
func TestAHeaterGivesWhatIsWanting(t *testing.T) {
	for _, at := range []float64{-6, 5, 10} {
		room := germinate.Room{T: at, RH: 0.99, Cover: 1, Hold: band(), Heater: 500}
		p := keptIn(t, 6, 5, room, inBand(t, room.Hold, 1e-6))
		h, e := p.Holding(), p.Energy()
		t.Logf("%v °C: %.2f kWh by the heater, %.2f kWh lost, %.2f kWh respired", at, h.Warmed/3.6e6, e.Lost/3.6e6, e.Respired/3.6e6)
		require.Positive(t, h.Warmed)
		assert.Zero(t, h.Removed)
		// a heap keeps its share of what it loses, of which the heater has no part
		assert.InEpsilon(t, h.Warmed, e.Now-e.Start-e.Respired+e.Lost+e.Vapour-(h.Added-h.Warmed), 1e-9)
		assert.Less(t, h.Added-h.Warmed, e.Lost)
	}
}

// A heater of too few watts gives all that it has, and the bed stays below.
func TestAWeakHeaterGivesItsPower(t *testing.T) {
	room := germinate.Room{T: -6, RH: 0.99, Cover: 1, Hold: band(), Heater: 20}
	p := keptIn(t, 4, 3, room, func(*germinate.Piece) {})
	assert.Less(t, p.T(), 13.0)
	before := p.Holding().Warmed
	require.NoError(t, p.Advance(hour, room))
	assert.InEpsilon(t, 20*hour, p.Holding().Warmed-before, 1e-9)
	want, err := p.Want(14, room)
	require.NoError(t, err)
	assert.Greater(t, want, 20.0)
	room.Heater = want + 1
	require.NoError(t, p.Advance(24*hour, room))
	assert.InDelta(t, 14, p.T(), 0.01, "with what it wants it comes there")
}

// Common practice: a few kilogrammes on a wide floor are heaped to keep warm in
// a damp room some degrees cooler.
func TestAThinBedCanBeHeapedToKeepWarm(t *testing.T) {
	room := germinate.Room{T: 12, RH: 0.97, Hold: band()}
	p := keptIn(t, 9, 5, room, inBand(t, room.Hold, 1))
	assert.Positive(t, p.Holding().Added)
	assert.Zero(t, p.Holding().Warmed)
}

func TestAWideBandAsksForNothing(t *testing.T) {
	room := cellar()
	free := piece(t, cast(t, "barley", 20, 0.45), 1, 15)
	wide := free
	require.NoError(t, free.Advance(4*24*hour, room))
	room.Hold = &germinate.Band{Low: 1, High: 40}
	require.NoError(t, wide.Advance(4*24*hour, room))
	assert.InDelta(t, free.T(), wide.T(), 1e-9)
	assert.Equal(t, germinate.Holding{}, wide.Holding())
}

// Common practice: a piece is brought to its temperature by about one kelvin an
// hour, where there is what brings it.
func TestABedOutsideItsBandIsBroughtBackSlowly(t *testing.T) {
	p := piece(t, cast(t, "barley", 20, 0.45), 1, 8)
	room := germinate.Room{T: 8, RH: 0.95, Hold: band(), Heater: 1e4, Cooler: 1e4}
	require.NoError(t, p.Advance(3*hour, room))
	assert.InDelta(t, 11, p.T(), 1e-6)
	require.NoError(t, p.Advance(6*hour, room))
	assert.InDelta(t, 14, p.T(), 1e-6)
	warm := piece(t, cast(t, "barley", 20, 0.45), 1, 22)
	room.T = 22
	require.NoError(t, warm.Advance(2*hour, room))
	assert.InDelta(t, 20, warm.T(), 1e-6)
}

// Own calculation: at rest the heat of respiration leaves by two faces of 8 W/(m² K)
// each, where the air over the bed takes no water.
func TestABedStandsWhereItsFacesLoseWhatItBreathes(t *testing.T) {
	room := germinate.Room{T: 12, RH: 1, Cover: 1}
	p := piece(t, cast(t, "barley", 40, 0.45), 1, 12)
	require.NoError(t, p.Advance(72*hour, room))
	lost, breathed := p.Energy().Lost, p.CO2()
	require.NoError(t, p.Advance(600, room))
	watts := (p.CO2() - breathed) / grain.StarchCO2 * grain.StarchHeat / 600
	t.Logf("%.3f m: %.1f W breathed, %.1f W lost, face %.2f °C, mean %.2f °C", p.Depth(), watts, (p.Energy().Lost-lost)/600, p.FaceT(), p.T())
	assert.InEpsilon(t, 12+watts/(2*8), p.FaceT(), 0.03)
}

// What is done never goes beyond what can be done, and a bed that is out of its band
// has all of it.
func TestNoMoreIsDoneThanCanBe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPiece(t)
		room := germinate.Room{
			T: rapid.Float64Range(-20, 35).Draw(t, "T"), RH: 0.99, Cover: 1, Hold: band(),
			Heater: rapid.SampledFrom([]float64{0, 1, 30, 1000}).Draw(t, "heater"),
			Cooler: rapid.SampledFrom([]float64{0, 1, 30, 1000}).Draw(t, "cooler"),
		}
		for range 20 {
			before := p.Holding()
			if p.Advance(1800, room) != nil { // frozen, or burnt
				return
			}
			h := p.Holding()
			require.LessOrEqual(t, h.Warmed-before.Warmed, 1800*room.Heater*(1+1e-9)+1)
			require.LessOrEqual(t, h.Cooled-before.Cooled, 1800*room.Cooler*(1+1e-9)+1)
			if rapid.Bool().Draw(t, "turn") {
				p.Turn()
			}
		}
	})
}
