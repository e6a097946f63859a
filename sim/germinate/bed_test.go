package germinate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
	"maltwright/sim/drying"
	"maltwright/sim/germinate"
	"maltwright/sim/grain"
)

// cellar is a floor maltings' room in winter.
func cellar() germinate.Room { return germinate.Room{T: 11, RH: 0.85} }

// floatFor lets a bed of so many kg of dry matter on a square metre float in
// the cellar for some days, turned at the given interval.
func floatFor(t *testing.T, dry, days, turnHours float64) germinate.Piece {
	p := piece(t, cast(t, "barley", dry, 0.45), 1, 14)
	for p.Age() < days*24*hour-1 {
		if p.SinceTurn() >= turnHours*hour-1 {
			p.Turn()
		}
		require.NoError(t, p.Advance(hour, cellar()))
	}
	return p
}

// Common practice: a piece of some 35 kg of barley on the square metre, turned
// two or three times a day in a cool cellar, stays between 12 and 22 °C.
func TestAFloorOfUsualDepthStaysCool(t *testing.T) {
	p := floatFor(t, 31, 6, 8)
	t.Logf("depth %.3f m, highest %.1f °C, now %.1f °C, %.1f %%, acrospire %.2f",
		p.Depth(), p.Highest(), p.T(), 100*p.Moisture(), p.Acrospire())
	assert.Less(t, p.Highest(), 22.0)
	assert.Greater(t, p.T(), 10.0)
	assert.Greater(t, p.Moisture(), 0.38)
}

func TestADeepUnturnedBedRunsHot(t *testing.T) {
	shallow, deep := floatFor(t, 31, 3, 8), floatFor(t, 80, 3, 8)
	left := floatFor(t, 80, 3, 1000)
	t.Logf("highest: %.1f °C shallow, %.1f deep, %.1f never turned", shallow.Highest(), deep.Highest(), left.Highest())
	assert.Greater(t, deep.Highest(), shallow.Highest()+10)
	assert.Greater(t, left.Highest(), 40.0, "common practice: a heap that is left heats itself dead")
	assert.InDelta(t, 8*hour, deep.LongestUnturned(), 1e-6)
	assert.InDelta(t, 72*hour, left.LongestUnturned(), 1e-6)
}

func TestATurnEvensAndCoolsTheBed(t *testing.T) {
	p := floatFor(t, 40, 2, 1000)
	assert.Greater(t, p.CoreT(), p.T())
	assert.Greater(t, p.T(), p.FaceT())
	before := p.T()
	p.Turn()
	assert.InDelta(t, p.T(), p.CoreT(), 1e-12)
	assert.InDelta(t, p.T(), p.FaceT(), 1e-12)
	cooled := before - p.T()
	t.Logf("a turn cools the piece from %.1f by %.1f K", before, cooled)
	assert.Greater(t, cooled, 0.5, "common practice: one to two kelvin")
	assert.Less(t, cooled, 3.0)
	assert.Equal(t, 1, p.Turns())
	assert.Zero(t, p.SinceTurn())
}

// A slab with even heating q per volume and both faces cooled: middle less face
// q·H²/(8λ), face less room q·H/(2h). Without evaporation (the room's vapour
// just balances the face) the bed must come to it.
func TestASteadyBedIsASlabWithEvenHeating(t *testing.T) {
	room := germinate.Room{T: 14, RH: 1}
	p := piece(t, cast(t, "barley", 15, 0.45), 1, 14)
	require.NoError(t, p.Advance(2*24*hour, room))
	before := p.Energy()
	require.NoError(t, p.Advance(600, room))
	e := p.Energy()
	q := (e.Lost - before.Lost + e.Vapour - before.Vapour) / 600 / p.Depth()
	assert.InEpsilon(t, q*p.Depth()*p.Depth()/(8*0.22), p.CoreT()-p.FaceT(), 0.02)
	dry := (e.Lost - before.Lost) / 600 / 2 / 8
	assert.InEpsilon(t, dry, p.FaceT()-room.T, 0.01)
}

func TestSprinklingWetsCoolsAndIsKept(t *testing.T) {
	p := piece(t, cast(t, "barley", 20, 0.40), 1, 18)
	mass, before := p.Mass(), p.T()
	require.NoError(t, p.Sprinkle(1, 10))
	assert.InDelta(t, mass+1, p.Mass(), 1e-12)
	assert.Less(t, p.T(), before)
	assert.InDelta(t, (20*0.4/0.6+1)/20, p.X(), 1e-12)
	assert.Error(t, p.Sprinkle(-1, 10))
	assert.Error(t, p.Sprinkle(30, 10), "over 60 %")
	assert.Error(t, p.Sprinkle(1, 80))
}

// Common practice: withering from about 45 to at most 35 % on the floor, thin,
// in room air of 18–22 °C and about 60 %, takes 12–36 h.
func TestWitheringTakesHalfADayToADayAndAHalf(t *testing.T) {
	for _, at := range []float64{18, 20, 22} {
		b := cast(t, "barley", 5.3, 0.45)
		b.Clock, b.Chitted = 2000, 0.96
		p := piece(t, b, 0.8, 16)
		acrospire, growing := p.Acrospire(), 0.0
		to35 := 0.0
		for p.Moisture() > 0.25 {
			require.NoError(t, p.Advance(hour/4, germinate.Room{T: at, RH: 0.6}))
			if to35 == 0 && p.Moisture() <= 0.35 {
				to35 = p.Age() / hour
			}
			if p.Moisture() <= 0.30 && growing == 0 {
				growing = p.Acrospire()
			}
		}
		t.Logf("%v °C: 35 %% after %.1f h; acrospire %.2f → %.2f", at, to35, acrospire, growing)
		assert.GreaterOrEqual(t, to35, 12.0)
		assert.LessOrEqual(t, to35, 36.0)
		assert.Greater(t, growing, acrospire, "growth goes on while the malt is wet")
		assert.Equal(t, growing, p.Acrospire(), "and has stopped under 30 %")
	}
}

func TestDrierAirAndWindWitherFaster(t *testing.T) {
	left := func(room germinate.Room, mesh bool) float64 {
		p, err := germinate.New(cast(t, "barley", 5.3, 0.45), drying.Malt{}, germinate.Floor{Area: 0.8, Mesh: mesh}, 16)
		require.NoError(t, err)
		require.NoError(t, p.Advance(12*hour, room))
		return p.Moisture()
	}
	still := left(germinate.Room{T: 20, RH: 0.6}, false)
	assert.Less(t, left(germinate.Room{T: 20, RH: 0.4}, false), still)
	assert.Less(t, left(germinate.Room{T: 20, RH: 0.6, AirSpeed: 0.5}, false), still)
	assert.Less(t, left(germinate.Room{T: 20, RH: 0.6}, true), still)
	assert.Greater(t, left(germinate.Room{T: 20, RH: 0.9}, false), still)
}

func TestALongStayDriesToTheBalanceOfTheRoom(t *testing.T) {
	p := piece(t, cast(t, "barley", 5.3, 0.45), 0.8, 16)
	for range 60 {
		require.NoError(t, p.Advance(12*hour, germinate.Room{T: 21.1, RH: 0.6}))
		p.Turn()
	}
	// NDSU extension table; seen: barley at 21.1 °C, 60 % holds 11.8 %.
	t.Logf("%.1f %%", 100*p.Moisture())
	assert.InDelta(t, 0.118, p.Moisture(), 0.01)
}

func TestAPieceRefusesWhatItCannotReckon(t *testing.T) {
	p := piece(t, cast(t, "barley", 20, 0.45), 1, 15)
	before := p
	room := cellar()
	for name, err := range map[string]error{
		"no time":           p.Advance(0, room),
		"not a time":        p.Advance(math.NaN(), room),
		"a quarter":         p.Advance(90*86400, room),
		"arctic room":       p.Advance(hour, germinate.Room{T: -35, RH: 0.5}),
		"heater that cools": p.Advance(hour, germinate.Room{T: 15, RH: 0.5, Heater: -1}),
		"cooler of a star":  p.Advance(hour, germinate.Room{T: 15, RH: 0.5, Cooler: 1e12}),
		"no such humidity":  p.Advance(hour, germinate.Room{T: 15, RH: 2}),
		"gale":              p.Advance(hour, germinate.Room{T: 15, RH: 0.5, AirSpeed: 9}),
		"band upside down":  p.Advance(hour, germinate.Room{T: 15, RH: 0.5, Hold: &germinate.Band{Low: 17, High: 14}}),
		"band of an oven":   p.Advance(hour, germinate.Room{T: 15, RH: 0.5, Hold: &germinate.Band{Low: 17, High: 80}}),
		"vacuum":            p.Advance(hour, germinate.Room{T: 15, RH: 0.5, Pressure: new(1.0)}),
		"boiling sprinkler": p.Sprinkle(0.1, 99),
	} {
		var out *air.RangeError
		assert.ErrorAs(t, err, &out, name)
	}
	assert.Equal(t, before, p, "a refusal leaves the piece as it was")

	b := cast(t, "barley", 20, 0.45)
	for name, f := range map[string]func() (germinate.Piece, error){
		"no floor": func() (germinate.Piece, error) { return germinate.New(b, b.Lot.Profile.Malt, germinate.Floor{}, 15) },
		"a heap": func() (germinate.Piece, error) {
			return germinate.New(b, b.Lot.Profile.Malt, germinate.Floor{Area: 0.01}, 15)
		},
		"a veil": func() (germinate.Piece, error) {
			return germinate.New(b, b.Lot.Profile.Malt, germinate.Floor{Area: 1e5}, 15)
		},
		"frozen": func() (germinate.Piece, error) {
			return germinate.New(b, b.Lot.Profile.Malt, germinate.Floor{Area: 1}, -2)
		},
		"no grain": func() (germinate.Piece, error) {
			return germinate.New(grain.Batch{}, drying.Malt{}, germinate.Floor{Area: 1}, 15)
		},
		"not a mass": func() (germinate.Piece, error) {
			c := b
			c.Water = math.NaN()
			return germinate.New(c, drying.Malt{}, germinate.Floor{Area: 1}, 15)
		},
	} {
		_, err := f()
		assert.Error(t, err, name)
	}
}

func TestAnEmptyPieceDoesNotPanic(t *testing.T) {
	var p germinate.Piece
	assert.Error(t, p.Advance(hour, cellar()))
	assert.Error(t, p.Sprinkle(1, 10))
	assert.NotPanics(t, func() {
		p.Turn()
		_, _, _, _ = p.T(), p.Moisture(), p.Classes(), p.Energy()
		_, _ = p.Acrospire(), p.Rub()
		_, _ = p.Depth(), p.Batch()
	})
}
