package germinate_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/air"
	"maltwright/sim/drying"
	"maltwright/sim/drying/invent"
	"maltwright/sim/germinate"
	"maltwright/sim/grain"
)

// stay is a time in one room, with a turn or a sprinkling at its end.
type stay struct {
	dt       float64
	room     germinate.Room
	turn     bool
	sprinkle float64
}

func drawStays(t *rapid.T) []stay {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) stay {
		s := stay{
			dt:   rapid.Float64Range(1, 24*hour).Draw(t, "dt"),
			turn: rapid.Bool().Draw(t, "turn"),
			room: germinate.Room{
				T:        rapid.Float64Range(6, 20).Draw(t, "T"),
				RH:       rapid.Float64Range(0.4, 0.95).Draw(t, "RH"),
				AirSpeed: rapid.SampledFrom([]float64{0, 0, 0.5}).Draw(t, "speed"),
			},
		}
		s.room.Cover = rapid.SampledFrom([]float64{0, 0.4, 1}).Draw(t, "cover")
		if rapid.Bool().Draw(t, "held") {
			low := rapid.Float64Range(12, 17).Draw(t, "low")
			s.room.Hold = &germinate.Band{Low: low, High: low + rapid.SampledFrom([]float64{0, 1, 3}).Draw(t, "band")}
			s.room.Heater = rapid.SampledFrom([]float64{0, 100, 1e5}).Draw(t, "heater")
			s.room.Cooler = rapid.SampledFrom([]float64{0, 100, 1e5}).Draw(t, "cooler")
		}
		if rapid.Bool().Draw(t, "wet") {
			s.sprinkle = rapid.Float64Range(0, 0.02).Draw(t, "sprinkle")
		}
		return s
	}), 1, 8).Draw(t, "stays")
}

func drawPiece(t *rapid.T) germinate.Piece { return drawPieceOf(t, nil) }

// drawPieceOf draws a piece of one material, nil for the malt of its species.
func drawPieceOf(t *rapid.T, material drying.Material) germinate.Piece {
	profile, err := grain.Of(rapid.SampledFrom(grain.Names()).Draw(t, "grain"))
	require.NoError(t, err)
	dry := rapid.Float64Range(0.1, 1e3).Draw(t, "dry")
	b, err := grain.NewBatch(grain.LotOf(profile, dry, 0.14))
	require.NoError(t, err)
	b.Leached, b.Respired = 0.01*dry, 0.003*dry
	b.Dry = dry - b.Leached - b.Respired
	b.Water = b.Dry * rapid.Float64Range(0.5, 0.8).Draw(t, "X")
	b.Clock = rapid.Float64Range(0, 1500).Draw(t, "clock")
	b.Chitted = profile.Due(b.Clock) * b.Lot.Germination
	if material == nil {
		material = profile.Malt
	}
	load := rapid.Float64Range(5, 60).Draw(t, "kg/m²")
	p, err := germinate.New(b, material, germinate.Floor{Area: dry / load, Mesh: rapid.Bool().Draw(t, "mesh")}, 14)
	require.NoError(t, err)
	return p
}

// work ends a stay the way both halves of a comparison do; it returns the water
// brought, kg.
func (s stay) work(t require.TestingT, p *germinate.Piece) float64 {
	if s.turn {
		p.Turn()
	}
	if s.sprinkle == 0 || p.X() > 1 {
		return 0
	}
	kg := s.sprinkle * p.DryMatter()
	require.NoError(t, p.Sprinkle(kg, 12))
	return kg
}

func TestWaterDryMatterAndHeatBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { balances(t, drawPiece(t), drying.Malt{}.DryHeat()) })
}

func TestWaterDryMatterAndHeatBalanceForAnyMaterial(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		material := invent.Material(t)
		balances(t, drawPieceOf(t, material), material.DryHeat())
	})
}

// kinks is how long, s, a device may be told to give more than the hold did in a stay.
const kinks = 1.0

// balances takes a piece through stays and holds its accounts to 1e-9.
func balances(t *rapid.T, p germinate.Piece, dryHeat float64) {
	first, brought := p.Batch(), 0.0
	warm, cool := 1.0, 1.0 // J
	for _, s := range drawStays(t) {
		err := p.Advance(s.dt, s.room)
		if errors.As(err, new(*air.RangeError)) { // dew has made an invented bed wetter than the model goes
			return
		}
		require.NoError(t, err)
		brought += s.work(t, &p)
		b := p.Batch()
		grown := grain.StarchWater * (b.Respired - first.Respired)
		require.InEpsilon(t, first.Water+grown+brought, b.Water+p.Evaporated(), 1e-9)
		require.InEpsilon(t, b.Lot.DryMass, b.Dry+b.Leached+b.Respired, 1e-9)
		require.InEpsilon(t, b.Mass(), p.Mass(), 1e-12)
		require.NoError(t, b.Check())
		e := p.Energy()
		in := e.Start + e.Respired + e.Sprinkled + e.Held
		require.InDelta(t, in, e.Now+e.Lost+e.Vapour, 1e-9*(math.Abs(in)+math.Abs(e.Lost)+math.Abs(e.Vapour)))
		require.InEpsilon(t, (dryHeat*b.Dry+4187*b.Water)*p.T(), e.Now, 1e-9, "the heat content is the temperature's")
		h := p.Holding()
		require.InDelta(t, e.Held, h.Added-h.Removed, 1e-9*(1+h.Added+h.Removed))
		// What a device gave is a part of what the hold did, which is summed up net over a
		// step: where the hold turns from cooling to warming in it the device has more, a few
		// parts in a million as a rule.
		warm, cool = warm+kinks*s.room.Heater, cool+kinks*s.room.Cooler
		require.LessOrEqual(t, h.Warmed, h.Added*(1+1e-4)+warm)
		require.LessOrEqual(t, h.Cooled, h.Removed*(1+1e-4)+cool)
	}
}

// The room of these stays jumps by up to 14 K, which no real one does. The bed
// then crosses the kinks of the model (base temperature, moistures of growth,
// edges of the band) inside steps of half an hour, which leaves some ten
// seconds of growth in doubt.
func TestChunksOfTimeHardlyMatterInAnyRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := drawPiece(t)
		cut := whole
		chunk := rapid.Float64Range(60, 600).Draw(t, "chunk")
		for _, s := range drawStays(t) {
			require.NoError(t, whole.Advance(s.dt, s.room))
			advance(t, &cut, s.dt, chunk, s.room)
			s.work(t, &whole)
			s.work(t, &cut)
		}
		require.InEpsilon(t, whole.Mass(), cut.Mass(), 1e-5, "a gram in a hundred kilograms")
		require.InEpsilon(t, whole.DryMatter(), cut.DryMatter(), 1e-5)
		require.InDelta(t, whole.Clock(), cut.Clock(), 0.05, "some ten seconds of growth")
		require.InDelta(t, whole.Chitted(), cut.Chitted(), 5e-4, "a kernel in two thousand")
		require.InDelta(t, whole.T(), cut.T(), 0.002)
	})
}

func TestChunksOfTimeDoNotMatterInAProcess(t *testing.T) {
	run := func(chunk float64) germinate.Piece {
		p := piece(t, cast(t, "barley", 20, 0.45), 1, 14)
		for range 15 {
			advance(t, &p, 8*hour, chunk, germinate.Room{T: 12, RH: 0.85, Hold: &germinate.Band{Low: 14, High: 17}})
			p.Turn()
		}
		advance(t, &p, 24*hour, chunk, germinate.Room{T: 20, RH: 0.6})
		return p
	}
	whole := run(8 * hour)
	for _, chunk := range []float64{600, 97, 3 * hour} {
		cut := run(chunk)
		assert.InEpsilon(t, whole.Mass(), cut.Mass(), 1e-6)
		assert.InEpsilon(t, whole.DryMatter(), cut.DryMatter(), 1e-6)
		assert.InEpsilon(t, whole.Clock(), cut.Clock(), 1e-6)
		assert.InDelta(t, whole.Chitted(), cut.Chitted(), 1e-6)
		assert.InEpsilon(t, whole.T(), cut.T(), 1e-5)
		assert.InEpsilon(t, whole.Energy().Lost, cut.Energy().Lost, 1e-5)
		assert.InEpsilon(t, whole.Holding().Added, cut.Holding().Added, 1e-5)
	}
}

// advance takes the piece through dt seconds in chunks.
func advance(t require.TestingT, p *germinate.Piece, dt, chunk float64, room germinate.Room) {
	for left := dt; left > 0; left -= chunk {
		require.NoError(t, p.Advance(math.Min(left, chunk), room))
	}
}

func TestACopyIsAPieceOfItsOwn(t *testing.T) {
	p := piece(t, cast(t, "barley", 20, 0.45), 1, 15)
	kept, ahead := p, p
	require.NoError(t, ahead.Advance(24*hour, cellar()))
	ahead.Turn()
	assert.Equal(t, kept, p)
	assert.NotEqual(t, kept, ahead)
}

func TestGrowthAndLossesOnlyRise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPiece(t)
		for _, s := range drawStays(t) {
			before := p
			require.NoError(t, p.Advance(s.dt, s.room))
			require.GreaterOrEqual(t, p.Clock(), before.Clock())
			require.GreaterOrEqual(t, p.Chitted(), before.Chitted()-1e-15)
			require.LessOrEqual(t, p.DryMatter(), before.DryMatter())
			require.GreaterOrEqual(t, p.CO2(), before.CO2())
			require.GreaterOrEqual(t, p.Highest(), before.Highest())
		}
	})
}

func TestNoInputPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		any := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-2, 50), rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1)}))
		p := drawPiece(t)
		b := p.Batch()
		for _, field := range []*float64{&b.Water, &b.Dry, &b.Clock, &b.Chitted, &b.Lot.DryMass, &b.Lot.Germination} {
			if rapid.IntRange(0, 5).Draw(t, "spoil") == 0 {
				*field = any.Draw(t, "field")
			}
		}
		made, err := germinate.New(b, b.Lot.Profile.Malt, germinate.Floor{Area: any.Draw(t, "area")}, any.Draw(t, "T"))
		if err == nil {
			p = made
		}
		before := p
		room := germinate.Room{T: any.Draw(t, "room"), RH: any.Draw(t, "RH"), AirSpeed: any.Draw(t, "speed"),
			Pressure: new(any.Draw(t, "pressure")), Hold: &germinate.Band{Low: any.Draw(t, "low"), High: any.Draw(t, "high")},
			Cover: any.Draw(t, "cover"), Heater: any.Draw(t, "heater"), Cooler: any.Draw(t, "cooler")}
		if p.Advance(math.Mod(any.Draw(t, "dt"), 1e4), room) != nil {
			require.Equal(t, before, p)
		}
		p.Turn()
		_ = p.Sprinkle(any.Draw(t, "kg"), any.Draw(t, "water"))
		_, _, _ = p.Classes(), p.Rub(), p.Energy()
	})
}

// Grain that holds its water more tightly withers to a higher moisture in the
// same room.
func TestAnotherCerealWithersOtherwise(t *testing.T) {
	end := func(k float64) float64 {
		c := drying.Barley()
		c.HendersonK *= k
		p, err := germinate.New(cast(t, "barley", 5, 0.45), drying.Malt{Cereal: &c}, germinate.Floor{Area: 2, Mesh: true}, 16)
		require.NoError(t, err)
		require.NoError(t, p.Advance(72*hour, germinate.Room{T: 20, RH: 0.5, AirSpeed: 0.3}))
		return p.X()
	}
	assert.Greater(t, end(1.0/3), end(1)+0.01)
	assert.Less(t, end(3), end(1)-0.01)
}
