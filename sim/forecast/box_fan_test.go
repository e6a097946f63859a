package forecast

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

// everyTen are looks, ten minutes apart, of so many days.
func everyTen(days float64) *Course {
	c := &Course{}
	for at := 600.0; at < days*day-60; at += 600 {
		c.Looks = append(c.Looks, at)
	}
	return c
}

func TestAFanRunsWhileTheBedIsWarmAndDoesNotChatter(t *testing.T) {
	f := grownIn(t, boxed(t, anyAir, "air at air-on 12 °C when bed above 16 °C; turn every 12 h; for 3 days"), cast(t, 0.45), everyTen(3))
	starts, was := 0, false
	for _, s := range f.Seen {
		on := s.Airflow > 0
		if s.At > day { // it looks every five minutes, and warms by a tenth of a kelvin in that time
			assert.Less(t, s.Bed, 16.6, "%.1f h", s.At/hour)
		}
		if s.At > day && on && was {
			assert.Greater(t, s.Bed, 15.0, "%.1f h", s.At/hour)
		}
		assert.Equal(t, on, !math.IsNaN(s.AirOn), "air that stands has no temperature")
		if was || on {
			assert.InDelta(t, 12, s.Temperature(vocabulary.PlaceAirOn), 0.1, "of a record it is that of when the fan ran")
		}
		if on && !was {
			starts++
		}
		was = on
	}
	assert.Greater(t, starts, 3)
	assert.Less(t, starts, 3*48, "half a kelvin lies between its marks: half an hour and more from start to start")
	assert.Less(t, f.Pieces[0].Blown.Fan, 2.5*day)
}

func TestAFanByTheClockRunsItsShare(t *testing.T) {
	f := grownIn(t, boxed(t, anyAir, "air at air-on 12 °C for 20 min every 1 h; turn every 7 h; for 2 days"), cast(t, 0.45), nil)
	assert.InDelta(t, 2*day/3, f.Pieces[0].Blown.Fan, 1)
	assert.InDelta(t, 2400, f.Pieces[0].Blown.Stood, 1)
}

func TestOfSeveralAirsTheFirstThatHoldsIsOn(t *testing.T) {
	const two = "air at air-on 11 °C with airflow 600 m3/h when bed above 16 °C; air at air-on 14 °C with airflow 300 m3/h; "
	f := grownIn(t, boxed(t, anyAir, two+"turn every 12 h; for 4 days"), cast(t, 0.45), everyTen(4))
	seen := map[float64]int{}
	for _, s := range f.Seen {
		seen[math.Round(s.Airflow*hour)]++
		assert.InDelta(t, map[float64]float64{600: 11, 300: 14}[math.Round(s.Airflow*hour)], s.AirOn, 1e-6)
	}
	assert.Positive(t, seen[600])
	assert.Positive(t, seen[300])
	b := f.Pieces[0].Blown
	assert.Empty(t, b.Never)
	assert.Empty(t, b.Behind)
	f = grownIn(t, boxed(t, anyAir, "air at air-on 14 °C; air at air-on 11 °C when bed above 10 °C; air at air-on 10 °C when bed above 40 °C; turn every 12 h; for 1 day"), cast(t, 0.45), nil)
	b = f.Pieces[0].Blown
	require.Len(t, b.Behind, 1)
	assert.Contains(t, b.Behind[0].Place().Text(), "11 °C")
	require.Len(t, b.Never, 1)
	assert.Contains(t, b.Never[0].Place().Text(), "10 °C")
}

// By hand: air of a hall of 20 °C and 50 % that is washed to 98 % comes on near its wet
// bulb of 13.8 °C, which the 0.6 K of its fan lift by 0.25, whatever is asked.
func TestAPlantGivesWhatItHasAndTellsWhatItLacks(t *testing.T) {
	p := boxed(t, "2.19 m2; airflow 500 m3/h", "air at air-on 11 °C; turn every 12 h; for 1 day")
	p.Site.Air.Low.SI, p.Site.Air.High.SI = 293.15, 293.15
	p.Site.Humidity.Low.SI, p.Site.Humidity.High.SI = 0.5, 0.5
	f := grownIn(t, p, cast(t, 0.45), &Course{Looks: []float64{12 * hour}})
	assert.InDelta(t, 14.15, f.Seen[0].AirOn, 0.3)
	short := Troubles[AirOnShort](f)
	require.Len(t, short, 1)
	assert.InDelta(t, 11, short[0].Asked, 1e-9)
	assert.InDelta(t, f.Seen[0].AirOn, short[0].Got, 0.1)
	assert.InEpsilon(t, 500/hour*1.22*2700*(short[0].Got-11), short[0].Short, 0.15, "by hand: saturated air takes 2.6 to 2.9 kJ/(kg K)")
	assert.Equal(t, "air-on 11 °C", short[0].Where().Text())
	assert.InDelta(t, 0, f.Totals.AirCold, 10)
	assert.Contains(t, f.Assumed, Assumption(BoxPlant{"box", true, true}))
	strong := grownIn(t, boxed(t, anyAir, "air at air-on 11 °C; turn every 12 h; for 1 day"), cast(t, 0.45), nil)
	assert.Empty(t, Troubles[AirOnShort](strong))
	assert.Positive(t, strong.Totals.AirCold)
}

func TestADrumIsAlikeThroughout(t *testing.T) {
	f := grownIn(t, boxed(t, anyAir+"; tumbles yes", "air at air-on 13 °C with airflow 500 m3/h; for 3 days"), cast(t, 0.45), &Course{Looks: []float64{3*day - 60}})
	s := f.Seen[0]
	assert.InDelta(t, s.Bottom, s.Top, 1e-9)
	box := grownIn(t, boxed(t, anyAir, "air at air-on 13 °C with airflow 500 m3/h; turn every 12 h; for 3 days"), cast(t, 0.45), &Course{Looks: []float64{3*day - 60}})
	assert.Greater(t, s.Bed, box.Seen[0].Top, "all of it stands where the top of a box does, and breathes as warm")
	assert.Less(t, s.Bed, box.Seen[0].Top+2)
	assert.Zero(t, f.Pieces[0].Blown.Uneven.Difference())
}

// Led round, a share r of the exhaust leaves the carbon dioxide of 1/(1 − r) as much air.
func TestAirLedRoundKeepsItsCarbonDioxide(t *testing.T) {
	const air = "air at air-on 13 °C with airflow 500 m3/h; turn every 12 h; for 3 days"
	fresh := grownIn(t, boxed(t, anyAir, air), cast(t, 0.45), nil).Pieces[0].Blown
	round := grownIn(t, boxed(t, anyAir+"; returns 80 %", air), cast(t, 0.45), nil).Pieces[0].Blown
	assert.InEpsilon(t, 5*fresh.CO2, round.CO2, 1e-6)
	assert.InEpsilon(t, fresh.Growing, round.Growing, 1e-6, "the bed minds nothing of it")
	assert.Greater(t, round.Cold, fresh.Cold)
}

func TestABedWithoutItsAirRunsHot(t *testing.T) {
	f := grownIn(t, boxed(t, anyAir, "air at air-on 13 °C when bed above 55 °C; turn every 12 h; for 2 days"), cast(t, 0.45), nil)
	warm := Troubles[BedWarm](f)
	require.Len(t, warm, 1)
	assert.Greater(t, warm[0].Temperature, 35.0)
	assert.InDelta(t, 2*day, f.Pieces[0].Blown.Stood, 1)
	assert.Zero(t, f.Totals.FanTime)
}

func TestABandThatIsMissedIsNoted(t *testing.T) {
	f := grownIn(t, boxed(t, anyAir, "hold bed at 14 to 15 °C; air at air-on 14 °C with airflow 300 m3/h; turn every 12 h; for 4 days"), cast(t, 0.45), nil)
	missed := f.Pieces[0].Blown.Missed
	require.Len(t, missed, 1)
	assert.Greater(t, missed[0].Above, day)
	assert.Greater(t, missed[0].Most, 17.0)
	assert.Zero(t, missed[0].Below)
}

func TestTheRoomsAirIsBlownWhereNothingElseIsAsked(t *testing.T) {
	f := grownIn(t, boxed(t, "2.19 m2; airflow 500 m3/h; heater 100 kW", "hold room at 15 °C; turn every 12 h; for 1 day"), cast(t, 0.45), &Course{Looks: []float64{20 * hour}})
	assert.InDelta(t, 15, f.Seen[0].AirOn, 1e-6)
	assert.Contains(t, f.Assumed, Assumption(RoomAirBlown{Flow: 500 / hour}))
	assert.Equal(t, vocabulary.PlaceRoom, f.Stages[0].Steps[0].Temperature.Place)
}

// What falls due as the bed is unloaded is not done.
func TestNobodySprinklesWhatIsUnloaded(t *testing.T) {
	for _, floor := range []string{anyAir, "30 m2"} {
		f := grownIn(t, boxed(t, floor, "hold bed at 15 to 17 °C; sprinkle 20 l/t every 24 h; turn every 12 h; for 5 days"), cast(t, 0.45), nil)
		require.Len(t, f.Sprinkled, 4, floor)
		for i, w := range f.Sprinkled {
			assert.InDelta(t, float64(i+1)*day, w.At-f.Pieces[0].Began, 60, floor)
		}
		f = grownIn(t, boxed(t, floor, "hold bed at 15 to 17 °C for 1 days; hold bed at 15 to 17 °C; sprinkle 20 l/t every 24 h; turn every 12 h; for 2 days"), cast(t, 0.45), nil)
		assert.Len(t, f.Sprinkled, 1, "%s: at the end of a hold, and not at that of the stage", floor)
	}
}

// So little air that the bed comes to no rest between turns counts by what it came to.
func TestABedThatNeverSettlesCountsAsUneven(t *testing.T) {
	uneven := func(flow, turns string) float64 {
		f := grownIn(t, boxed(t, anyAir, "air at air-on 13 °C with airflow "+flow+"; turn every "+turns+"; for 5 days"), cast(t, 0.45), nil)
		return f.Pieces[0].Blown.Uneven.Difference()
	}
	rare, often := uneven("300 m3/h", "24 h"), uneven("300 m3/h", "4 h")
	assert.Greater(t, rare, 6.0)
	assert.Greater(t, often, 4.5)
	most := uneven("500 m3/h", "24 h")
	assert.LessOrEqual(t, uneven("500 m3/h", "4 h"), 1.1*most, "no more than it would settle to")
}

// A still bed is sprinkled to a moisture as well, with just the water that brings it there.
func TestABedIsSprinkledToAMoistureWhenItIsDrier(t *testing.T) {
	for _, floor := range []string{anyAir, "16 m2"} {
		f := grownIn(t, boxed(t, floor, "hold bed at 15 to 17 °C; humidity 60 %; sprinkle to moisture 45 % when moisture below 43.5 %; turn every 12 h; for 4 days"), cast(t, 0.45), everyTen(4))
		require.NotEmpty(t, f.Sprinkled, floor)
		least := 1.0
		for _, s := range f.Seen {
			least = min(least, s.Moisture)
		}
		assert.InDelta(t, 0.435, least, 0.002, floor)
		sum := 0.0
		for _, w := range f.Sprinkled {
			sum += w.Water
			assert.InDelta(t, 44, w.Water, 8, "one and a half points of 1,580 kg, over 55 % of dry matter")
		}
		assert.InDelta(t, sum, f.Totals.Sprinkled, 1e-9)
	}
}

// A box is withered with air of its own, and the kiln goes on with that malt.
func TestABoxWithersAndTheKilnGoesOn(t *testing.T) {
	f := run1(t, `steep in "tub" { soak 8 h in water at 15 °C; rest 10 h in air at 15 °C; soak 8 h in water at 15 °C; rest 7 h in air at 15 °C; soak 3 h in water at 15 °C }
  germinate on "small box" { hold bed at 14 to 17 °C; turn every 8 h; for 5 days }
  wither on "small box" { air at air-on 20 °C; until moisture at most 33 %; allow 1 to 60 h }
`+kilnText)
	require.Len(t, f.Pieces, 2)
	for _, p := range f.Pieces {
		assert.NotNil(t, p.Blown, p.Stage)
	}
	withered := f.Stages[2].Steps[0]
	assert.InDelta(t, 0.33, withered.MoistureEnd, 0.001)
	assert.Equal(t, ByGate, withered.EndedBy)
	assert.Equal(t, Temperature{vocabulary.PlaceAirOn, 20, 20, true}, withered.Temperature)
	assert.InDelta(t, withered.MoistureEnd, f.Stages[3].Steps[0].MoistureStart, 1e-9)
	assert.Equal(t, model.KilnStage, f.Stages[3].Kind)
	assert.Zero(t, f.Pieces[1].Blown.Sprayed, "withering air is not sprayed")
}

// What is learnt of growth and breathing acts on a box as on a floor.
func TestABoxGrowsAndBreathesByTheFactorsOfTheHouse(t *testing.T) {
	p := boxed(t, anyAir, "hold bed at 15 to 17 °C; turn every 12 h; for 4 days")
	usual := forecastOf(t, p, Options{})
	quick := forecastOf(t, p, Options{Growth: new(1.2)})
	calm := forecastOf(t, p, Options{Respiration: new(0.8)})
	assert.Greater(t, quick.Pieces[0].Acrospire, usual.Pieces[0].Acrospire+0.05)
	// a bed that breathes less dries less, and what is moister breathes more
	assert.InDelta(t, 0.83, calm.Pieces[0].Blown.Growing/usual.Pieces[0].Blown.Growing, 0.04)
	assert.InDelta(t, 0.83, calm.Pieces[0].Blown.Uneven.Difference()/usual.Pieces[0].Blown.Uneven.Difference(), 0.05)
}

// A bed that is led from one temperature to another is led by its air.
func TestAnAirFollowsABedThatIsLed(t *testing.T) {
	f := grownIn(t, boxed(t, anyAir, "hold bed from 18 to 13 °C over 3 days; turn every 12 h; for 4 days"), cast(t, 0.45), &Course{Looks: []float64{1.5 * day, 3.9 * day}})
	assert.InDelta(t, 15.5, f.Seen[0].Bed, 0.7)
	assert.InDelta(t, 13, f.Seen[1].Bed, 0.7)
	assert.Empty(t, f.Pieces[0].Blown.Missed)
}

// By hand: the 1.5 kW of a fan in 1200 m³/h are 3.7 K, and all that it draws is heat, which the cooler takes
// out. A room that is held knows no summer.
func TestTheCoolerOfABoxTakesOutTheWarmthOfItsFan(t *testing.T) {
	grown := func(air, plant, grow string) *Blown {
		p := boxed(t, "2.19 m2; airflow 1200 m3/h; cooler 100 kW; heater 100 kW"+plant, grow+"; turn every 12 h; for 2 days")
		low, high, _ := strings.Cut(air, " ")
		p.Site.Air.Low.SI, p.Site.Air.High.SI = celsius(t, low), celsius(t, high)
		return grownIn(t, p, cast(t, 0.45), nil).Pieces[0].Blown
	}
	const held = "hold bed at 14 to 16 °C"
	weak, strong := grown("18 18", "; fan 100 W", held), grown("18 18", "; fan 1.5 kW", held)
	assert.InEpsilon(t, 1400*2*day, strong.Cold-weak.Cold, 0.01)
	assert.InDelta(t, 1400, strong.PeakCold-weak.PeakCold, 30)
	assert.InDelta(t, 18, strong.Outside, 1e-9)
	assert.Zero(t, strong.Summer.T)
	assumed := grown("18 18", "", held)
	assert.InDelta(t, assumed.FanEnergy-100*2*day, assumed.Cold-weak.Cold, 0.01*assumed.Cold)

	// in the warmest air of its band it wants what it takes where that is its only air
	mild, warm := grown("10 26", "; fan 1.5 kW", held), grown("26 26", "; fan 1.5 kW", held)
	assert.InDelta(t, 26, mild.Summer.T, 1e-9)
	assert.InEpsilon(t, warm.PeakCold, mild.Summer.Cold, 0.02)
	assert.Greater(t, mild.Summer.Cold, mild.PeakCold+1000)
	assert.Zero(t, grown("10 26", "", "hold room at 15 °C").Summer.T)
}

func celsius(t *testing.T, written string) float64 {
	c, err := strconv.ParseFloat(written, 64)
	require.NoError(t, err)
	return c + 273.15
}
