package forecast

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/vocabulary"
)

// boxAt is a box in a room of so many °C.
func boxAt(t *testing.T, room float64, box, growing string) *Forecast {
	t.Helper()
	p := boxed(t, box, growing)
	p.Site.Air.Low.SI, p.Site.Air.High.SI = room+zeroC, room+zeroC
	return forecastOf(t, p, Options{})
}

// What a bed is late by is what a plant that makes any air is sooner by.
func TestAWeakHeaterIsToldWithWhereTheBedComesTo(t *testing.T) {
	const grow = "hold bed at 14 to 15 °C; turn every 12 h; until acrospire at least 1/4; allow 1 to 20 days"
	weak := boxAt(t, 4, "2.19 m2; airflow 500 m3/h; heater 2.5 kW; cooler 100 kW", grow)
	strong := boxAt(t, 4, anyAir, grow)
	assert.Empty(t, Troubles[AirOnShort](strong))
	short := Troubles[AirOnShort](weak)
	require.Len(t, short, 1)
	bed := short[0].Bed
	assert.True(t, short[0].ToHold)
	assert.Greater(t, bed.Mean, 4.0)
	assert.Less(t, bed.Mean, 13.0)
	assert.LessOrEqual(t, bed.Most, bed.Mean, "the coldest")
	assert.InEpsilon(t, grown(weak).Waited-grown(strong).Waited, bed.Later, 0.25, "the band is kept in its middle, and Later counts from its edge")
	assert.Empty(t, Troubles[BandOff](weak), "it is told once where the bed comes to")
}

// A bed that runs away blows its own heat back at the cooler: what that lacks is of before.
func TestWhatACoolerLacksIsOfBeforeTheBedRunsAway(t *testing.T) {
	const box = "2.19 m2; airflow 500 m3/h; heater 100 kW; cooler %g W; returns 95 %%"
	const grow = "air at air-on 13 °C; humidity air-on 98 %; turn every 12 h; for 5 days"
	f := boxAt(t, 14, fmt.Sprintf(box, 700.0), grow)
	short := Troubles[AirOnShort](f)
	require.Len(t, short, 1)
	assert.Greater(t, short[0].Bed.Most, 30.0)
	hot := Troubles[RanHot](f)
	require.Len(t, hot, 1)
	assert.InDelta(t, 30, hot[0].Lost, 1e-9)
	assert.Greater(t, hot[0].Highest, 35.0)
	assert.Greater(t, hot[0].Time, day/2)
	assert.Less(t, short[0].Short, 4000.0, "a tonne breathes 2 to 3 kW")
	mended := boxAt(t, 14, fmt.Sprintf(box, 700+short[0].Short), grow)
	assert.Empty(t, Troubles[AirOnShort](mended))
	assert.Empty(t, Troubles[RanHot](mended))
}

// The same of a bed that is held: the farther it is from its band the colder its air must be.
// A bed that is kept from it wants somewhat more as it grows, and as it works off what it owes
// of a steep in still water. Some 80 W of its cooler are for the warmth of its fan.
func TestWhatACoolerLacksToHoldABedKeepsItFromRunningAway(t *testing.T) {
	const box = "2.19 m2; airflow 500 m3/h; heater 100 kW; cooler %g W; returns 70 %%"
	const grow = "hold bed at 14 to 17 °C; turn every 12 h; for 5 days"
	f := boxAt(t, 22, fmt.Sprintf(box, 680.0), grow)
	short := Troubles[AirOnShort](f)
	require.Len(t, short, 1)
	assert.True(t, short[0].ToHold)
	assert.Greater(t, short[0].Bed.Most, 25.0)
	assert.True(t, short[0].RunsAway)
	mended := boxAt(t, 22, fmt.Sprintf(box, 680+short[0].Short), grow)
	assert.Empty(t, Troubles[RanHot](mended))
	for _, still := range Troubles[AirOnShort](mended) {
		assert.Less(t, still.Bed.Most, 18.5, "a degree and a half above its band")
		assert.False(t, still.RunsAway)
	}
}

func TestMoreAirThanTheFanDrivesIsTold(t *testing.T) {
	const grow = "air at air-on 13 °C with airflow %g m3/h; turn every 12 h; for 1 day"
	short := Troubles[FanShort](boxAt(t, 14, anyAir, fmt.Sprintf(grow, 900.0)))
	require.Len(t, short, 1)
	assert.Equal(t, "900 m3/h", short[0].Asked.String())
	assert.Equal(t, "700 m3/h", short[0].Fan.String())
	assert.Empty(t, Troubles[FanShort](boxAt(t, 14, anyAir, fmt.Sprintf(grow, 720.0))))
}

func TestABandThatIsMissedIsToldWithWhatItDoes(t *testing.T) {
	off := Troubles[BandOff](boxAt(t, 14, anyAir, "hold bed at 14 to 15 °C; air at air-on 14 °C with airflow 300 m3/h; turn every 12 h; for 4 days"))
	require.Len(t, off, 1)
	m := off[0].Missed
	assert.Equal(t, "14 to 15 °C", m.Place.Text())
	assert.Less(t, m.Later, 0.0, "what is warmer grows sooner")
	assert.Greater(t, m.Later, -m.Above)
	assert.Empty(t, Troubles[BandOff](boxAt(t, 14, anyAir, "hold bed at 14 to 17 °C; turn every 12 h; for 4 days")))
}

func TestABoxInAFrozenHallFreezes(t *testing.T) {
	f := boxAt(t, -6, "2.19 m2; airflow 500 m3/h; cooler 100 kW", "hold bed at 14 to 17 °C; turn every 12 h; for 4 days")
	frozen := Troubles[BedFrozen](f)
	require.Len(t, frozen, 1)
	assert.InDelta(t, -6, frozen[0].Room, 1e-9)
	assert.True(t, f.BrokenOff())
}

func TestAWitheringBedThatRunsHotIsTold(t *testing.T) {
	const grow = `hold bed at 14 to 16 °C; turn every 12 h; for 4 days } wither on "box" { air at air-on 20 °C%s; for 24 h`
	f := boxAt(t, 14, anyAir, fmt.Sprintf(grow, " when time below 2 h"))
	require.Len(t, Troubles[RanHot](f), 1)
	warm := Troubles[BedWarm](f)
	require.Len(t, warm, 2, "germinating, and withering")
	assert.Greater(t, warm[1].Temperature, 35.0)
	f = boxAt(t, 14, anyAir, fmt.Sprintf(grow, ""))
	assert.Empty(t, Troubles[RanHot](f))
	assert.Len(t, Troubles[BedWarm](f), 1)
}

func TestTheAirGovernsABedThatIsHeldToo(t *testing.T) {
	f := boxAt(t, 14, anyAir, "hold bed at 14 to 17 °C; air at air-on 15 °C when bed below 15 °C; air at air-on 12 to 13 °C; air at air-on 9 °C when bed above 20 °C; turn every 12 h; for 1 day")
	assert.Equal(t, Temperature{vocabulary.PlaceAirOn, 12, 15, true}, f.Stages[1].Steps[0].Temperature)
	governs := 0
	for _, a := range f.Assumed {
		if a, ok := a.(AirGoverns); ok {
			governs++
			assert.Equal(t, "14 to 17 °C", a.Hold.Range.Range.String())
		}
	}
	assert.Equal(t, 1, governs)
	f = boxAt(t, 14, anyAir, "hold room at 15 °C; air at air-on 13 °C; turn every 12 h; for 1 day")
	assert.Equal(t, vocabulary.PlaceRoom, f.Stages[1].Steps[0].Temperature.Place, "it is held, and the fan draws from it")
}
