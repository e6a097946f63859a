package forecast

import (
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/air"
	"maltwright/sim/kiln"
	"maltwright/sim/work"
)

// tower is a kiln of two floors for 800 kg of green malt.
const tower = `
site "maltings" { air 12 °C; humidity 70 %; water 12 °C; altitude 100 m }
grain "lot" { species barley; already green malt; moisture 44 % }
kiln "lower floor" { area 8 m2; airflow 2000 m3/h; heater 90 kW; reaches 20 to 100 °C; fired gas by indirect }
kiln "upper floor" { area 8 m2; air from "lower floor" }
`

const (
	below = "dry at air-on 60 °C for 7 h; dry at air-on 65 °C for 4 h; cure from air-on 65 to 82 °C over 2 h; cure at air-on 83 °C for 4 h; cool to malt 35 °C"

	untilDry = "dry until moisture at most 12 % allow 8 to 40 h"
	asNeeded = "dry at air-on 60 °C until moisture at most 7 % allow 2 to 20 h; cure from air-on 60 to 82 °C over 3 h; cure at air-on 83 °C for 4 h; cool to malt 35 °C"
)

// stages is a process of the tower with these stages.
func stages(house string, list ...string) string {
	return house + "process \"p\" {\n make pale malt\n from 800 kg of \"lot\"\n at \"maltings\"\n" + strings.Join(list, "\n") + "\n}\n"
}

func onFloors(house, upper, lower string) string {
	return stages(house, `kiln in "upper floor" { `+upper+" }", `kiln in "lower floor" { `+lower+" }")
}

func runText(t testing.TB, text string, o Options) *Forecast {
	t.Helper()
	f, err := Run(load(t, text), o)
	require.NoError(t, err)
	return f
}

// What the upper floor took, and what the lower one gives in the same forecast, are the same: in the
// mean of the time to 0.3 K and a tenth of a gram.
func TestExhaustThatIsTakenIsTheExhaustThatIsGiven(t *testing.T) {
	for name, c := range map[string][2]string{
		"by the clock": {"dry for 18 h", below}, "as dry as asked": {untilDry, asNeeded}, "short above": {"dry for 10 h", below},
		"flap": {"dry at air-on 45 °C for 18 h", below},
	} {
		f := runText(t, onFloors(tower, c[0], c[1]), Options{})
		require.False(t, f.BrokenOff(), name)
		fed := f.Kilns[0].Fed
		require.NotNil(t, fed, name)
		assert.True(t, fed.Met, name)
		assert.LessOrEqual(t, fed.Rounds, 6, name)
		assert.Less(t, fed.Kelvin, 0.3, name)
		assert.Less(t, fed.Ratio, 1e-4, name)
		assert.Nil(t, f.Kilns[1].Fed, name)
		assert.Empty(t, Troubles[FloorsApart](f), name)
		assert.Less(t, f.Totals.FinalMoisture, 0.05, name)
	}
}

// The malt takes up the heat and the water that leave the floor below: what heat the upper floor
// is given is what the lower one let go, within what straight lines between the times leave.
func TestHeatOfTheExhaustIsWhatTheLowerFloorLetGo(t *testing.T) {
	p := load(t, onFloors(tower, "dry for 18 h", below))
	looks := []float64{17.99 * 3600, 34 * 3600}
	f, err := Run(p, Options{Course: &Course{Looks: looks, AtEnds: true}})
	require.NoError(t, err)
	var upper, lower kiln.Balance
	for _, s := range f.Seen {
		if s.OnKiln && s.Of == p.Stages[0] {
			upper = s.Balance
		} else if s.OnKiln {
			lower = s.Balance
		}
	}
	assert.InEpsilon(t, lower.Exhaust, upper.Intake, 0.01)
	assert.InEpsilon(t, f.Kilns[0].Fed.Heat, upper.Intake, 0.01)
	assert.Zero(t, upper.Heater)
	assert.InDelta(t, upper.Intake, upper.Warmed+upper.Evaporated+upper.Exhaust, 1e-6*upper.Intake)
}

// First principles: the two floors together need no less than the heat that turns the water into
// vapour, what stays in the malt, and what the exhaust of the upper floor, the only one that leaves, takes along.
func TestTwoFloorsNeedNoLessThanWaterMaltAndExhaustTake(t *testing.T) {
	for _, c := range [][2]string{{"dry for 18 h", below}, {untilDry, asNeeded}} {
		p := load(t, onFloors(tower, c[0], c[1]))
		f, err := Run(p, Options{Course: &Course{Looks: []float64{1e7}, AtEnds: true}})
		require.NoError(t, err)
		var upper, lower kiln.Balance
		for _, s := range f.Seen {
			if s.OnKiln && s.Of == p.Stages[0] {
				upper = s.Balance
			} else if s.OnKiln {
				lower = s.Balance
			}
		}
		water := upper.On - lower.Left
		least := air.EvaporationHeat*water + upper.Exhaust
		assert.GreaterOrEqual(t, f.Totals.KilnEnergy, 0.999*least)
		// and with what it leaves in the malt, and the heat that loosens the last of the water, it is all of it
		all := upper.Evaporated + lower.Evaporated + upper.Warmed + lower.Warmed + upper.Exhaust + (lower.Exhaust - upper.Intake)
		assert.InEpsilon(t, all, f.Totals.KilnEnergy, 1e-6)
		assert.InEpsilon(t, f.Totals.KilnEnergy, least, 0.05, "little is left for the malt")
	}
}

// The same malt on the lower floor alone, with the same air and dried as far before it is cured, needs more heat:
// what the second floor takes back.
func TestSecondFloorSavesHeat(t *testing.T) {
	two := runText(t, onFloors(tower, untilDry, asNeeded), Options{})
	one := runText(t, stages(tower, `kiln in "lower floor" { dry at air-on 60 °C until moisture at most 7 % allow 2 to 60 h; cure from air-on 60 to 82 °C over 3 h; cure at air-on 83 °C for 4 h; cool to malt 35 °C }`), Options{})
	assert.InDelta(t, one.Totals.FinalMoisture, two.Totals.FinalMoisture, 0.01)
	tonnes := one.Totals.Malt / 1000
	a, b := one.Totals.KilnEnergy/3.6e6/tonnes, two.Totals.KilnEnergy/3.6e6/tonnes
	t.Logf("heat for a tonne of malt: %.0f kWh on one floor, %.0f kWh on two", a, b)
	assert.Less(t, b, 0.85*a)
	assert.Greater(t, b, 0.693*two.Totals.KilnWater/two.Totals.Malt*1000, "2.5 MJ a kg of water, 0.693 kWh")
}

func TestAirComesOnAsTheStepBelowLeavesIt(t *testing.T) {
	f := runText(t, onFloors(tower, "dry for 18 h", below), Options{})
	fed, step := f.Kilns[0].Fed, f.Stages[0].Steps[0]
	assert.Equal(t, model.StageKind("kiln"), f.Stages[0].Kind)
	assert.True(t, step.Temperature.Known)
	assert.Equal(t, "air-on", step.Temperature.Place)
	assert.InDelta(t, fed.Warmest, step.Temperature.To, 1)
	assert.Greater(t, fed.Warmest, 70.0)
	assert.Less(t, fed.Coolest, fed.Warmest-20)
	assert.InDelta(t, 18*3600, fed.Took, 1)
	var told AirOfFloor
	for _, a := range f.Assumed {
		switch a := a.(type) {
		case AirOfFloor:
			told = a
		case KilnHeater, KilnAir:
			assert.Fail(t, "nothing is taken for granted of heater and fan", "%#v", a)
		}
	}
	assert.Equal(t, "lower floor", told.Floor)
	assert.InDelta(t, 18*3600, told.Cycle, 60)
}

// Where the floor above asks for cooler air than comes, a flap mixes outside air in.
func TestFlapHoldsTheUpperFloorToWhatItAsks(t *testing.T) {
	p := load(t, onFloors(tower, "dry at air-on 42 °C for 18 h", below))
	f, err := Run(p, Options{Course: &Course{Looks: []float64{16 * 3600}}})
	require.NoError(t, err)
	assert.InDelta(t, 42, f.Seen[0].AirOn, 0.01)
	for _, s := range Troubles[KilnShort](f) {
		assert.NotEqual(t, kiln.ByReachHigh, s.Limit)
	}
	hot := runText(t, onFloors(tower, "dry for 18 h", below), Options{})
	assert.Less(t, f.Kilns[0].Fed.Heat, 0.95*hot.Kilns[0].Fed.Heat, "some of it goes by unused")
}

// A heater of its own warms what comes too cool, and what it gives counts.
func TestUpperFloorWithAHeaterOfItsOwn(t *testing.T) {
	house := strings.Replace(tower, `air from "lower floor"`, `air from "lower floor"; heater 30 kW; fired gas by indirect`, 1)
	p := load(t, onFloors(house, "dry at air-on 60 °C for 18 h", below))
	f, err := Run(p, Options{Course: &Course{Looks: []float64{3600}}})
	require.NoError(t, err)
	assert.InDelta(t, 60, f.Seen[0].AirOn, 0.01)
	assert.Positive(t, f.Seen[0].Heat)
	without := runText(t, onFloors(tower, "dry at air-on 90 °C for 18 h", below), Options{})
	short := Troubles[KilnShort](without)
	require.NotEmpty(t, short)
	assert.Equal(t, kiln.ByFeed, short[0].Limit)
	assert.Equal(t, "dry at air-on 90 °C for 18 h", strings.TrimSpace(short[0].Place.Text()))
}

// The floor that is through first waits: the malt above goes on drying in the exhaust, and where the
// floor below is through, it stands empty, fire and fan rest, and the malt above lies as it is.
func TestShorterFloorWaits(t *testing.T) {
	early := runText(t, onFloors(tower, "dry for 10 h", below), Options{})
	fed := early.Kilns[0].Fed
	assert.InDelta(t, fed.Below-fed.Took, fed.Waited, 10)
	steps := early.Stages[0].Steps
	require.Len(t, steps, 2)
	assert.Equal(t, Waiting, steps[1].Label)
	assert.InDelta(t, fed.Below, steps[1].End, 10)
	assert.Less(t, steps[1].MoistureEnd, steps[1].MoistureStart-0.01)

	p := load(t, onFloors(tower, "dry for 24 h", below))
	late, err := Run(p, Options{Course: &Course{Looks: []float64{17.5 * 3600, 23 * 3600}}})
	require.NoError(t, err)
	assert.Zero(t, late.Kilns[0].Fed.Waited)
	require.Len(t, late.Stages[0].Steps, 1)
	assert.InDelta(t, late.Seen[0].Moisture, late.Seen[1].Moisture, 0.003)
	assert.InDelta(t, late.Seen[0].Malt, late.Seen[1].Malt, 15)
	assert.Greater(t, late.Seen[1].Malt, 30.0)
}

// Three floors, each fed by the next: the malt goes down, the air up.
func TestThreeFloors(t *testing.T) {
	house := tower + `kiln "top floor" { area 8 m2; air from "upper floor" }
`
	f := runText(t, stages(house, `kiln in "top floor" { dry for 17 h }`, `kiln in "upper floor" { dry for 17 h }`, `kiln in "lower floor" { `+below+` }`), Options{})
	require.False(t, f.BrokenOff(), "%v", f.Trouble)
	top, upper := f.Kilns[0].Fed, f.Kilns[1].Fed
	require.NotNil(t, top)
	require.NotNil(t, upper)
	assert.Equal(t, "upper floor", top.By.Kiln.Name)
	assert.True(t, top.Met)
	assert.True(t, upper.Met)
	assert.Less(t, top.Kelvin, 0.3)
	assert.Less(t, upper.Kelvin, 0.3)
	assert.Less(t, top.Warmest, upper.Warmest)
	assert.Less(t, f.Stages[1].Steps[0].MoistureEnd, f.Stages[0].Steps[0].MoistureEnd)
}

// Without a stage below, or with that before it, nothing is known of the exhaust: outside air is taken.
func TestUnknownExhaustIsTakenAsOutsideAir(t *testing.T) {
	for name, text := range map[string]string{
		"alone":       stages(tower, `kiln in "upper floor" { dry for 18 h }`),
		"upside down": stages(tower, `kiln in "lower floor" { `+below+` }`, `kiln in "upper floor" { dry for 18 h }`),
	} {
		p := load(t, text)
		f, err := Run(p, Options{Course: &Course{Looks: []float64{1800, 19 * 3600}}})
		require.NoError(t, err)
		require.False(t, f.BrokenOff(), name)
		for _, s := range f.Seen {
			if s.OnKiln && s.Of.(*model.Kilning).Kiln.Name == "upper floor" {
				assert.InDelta(t, 12, s.AirOn, 0.01, name)
			}
		}
		for _, k := range f.Kilns {
			assert.Nil(t, k.Fed, name)
		}
	}
}

// A record tells of this batch; the batch before it, in whose exhaust it lies, has gone as the
// process says.
func TestBatchUnderWayLiesInTheExhaustOfAnUndisturbedOne(t *testing.T) {
	p := load(t, onFloors(tower, "dry for 18 h", below))
	plan := runText(t, onFloors(tower, "dry for 18 h", below), Options{})
	looks := []float64{6 * 3600, 15 * 3600}
	as := func(c Course) *Forecast {
		c.Looks = looks
		f, err := Run(p, Options{Course: &c})
		require.NoError(t, err)
		return f
	}
	undisturbed := as(Course{})
	assert.InDelta(t, plan.Stages[0].Steps[0].MoistureEnd, undisturbed.Stages[0].Steps[0].MoistureEnd, 1e-5)
	late := as(Course{Ends: []Ended{{Kind: "dry", Number: 1, At: 20 * 3600, Exact: true}, {Kind: "dry", Number: 2, At: 40 * 3600, Exact: true}}})
	for i := range looks {
		assert.InDelta(t, undisturbed.Seen[i].AirOn, late.Seen[i].AirOn, 1e-9)
		assert.InDelta(t, undisturbed.Seen[i].Moisture, late.Seen[i].Moisture, 1e-9)
	}
	assert.InDelta(t, 20*3600, late.Stages[0].Steps[0].End, 1)
	assert.InDelta(t, 40*3600, late.Stages[1].Steps[0].End, 1)
}

// Begun near another forecast the search comes to the same, sooner: the moisture that goes down
// differs by no more than what it leaves open.
func TestSearchThatBeginsNearbyComesToTheSame(t *testing.T) {
	for _, c := range [][2]string{{"dry for 18 h", below}, {untilDry, asNeeded}} {
		p := load(t, onFloors(tower, c[0], c[1]))
		middle, err := Run(p, Options{})
		require.NoError(t, err)
		for _, growth := range []float64{0.9, 1.1} {
			o := Options{Drying: &growth}
			cold, err := Run(p, o)
			require.NoError(t, err)
			o.Like = middle
			warm, err := Run(p, o)
			require.NoError(t, err)
			assert.LessOrEqual(t, warm.Kilns[0].Fed.Rounds, cold.Kilns[0].Fed.Rounds)
			assert.InDelta(t, cold.Totals.FinalMoisture, warm.Totals.FinalMoisture, 2e-4)
			assert.InDelta(t, cold.Totals.Total, warm.Totals.Total, 300)
			assert.InEpsilon(t, cold.Totals.KilnEnergy, warm.Totals.KilnEnergy, 3e-3)
		}
	}
}

// What is begun again where the malt comes to the kiln is what a whole run gives.
func TestTwoFloorsDriedOtherwise(t *testing.T) {
	p := load(t, onFloors(tower, "dry for 18 h", below))
	f, err := Run(p, Options{})
	require.NoError(t, err)
	slow := 0.8
	again, err := f.Dried(Options{Drying: &slow}, work.NewMeter(context.Background(), nil))
	require.NoError(t, err)
	whole, err := Run(p, Options{Drying: &slow})
	require.NoError(t, err)
	assert.Equal(t, whole.Totals.FinalMoisture, again.Totals.FinalMoisture)
	assert.Equal(t, whole.Kilns[0].Fed.Rounds, again.Kilns[0].Fed.Rounds)
}

// Of a function with a steep slope, by which simply supposing what came out would run away, the
// search finds what it leaves as it is.
func TestFixedPointOfASteepFunction(t *testing.T) {
	for name, g := range map[string]func(x, t float64) (float64, float64){
		"gentle": func(x, t float64) (float64, float64) { return 0.1 + 0.3*x, 40 + 10*x },
		"steep":  func(x, t float64) (float64, float64) { return 0.9 - 4*x, 60 - 100*x },
		"rising": func(x, t float64) (float64, float64) { return 0.02 + 0.93*x, 40 },
		"even":   func(x, t float64) (float64, float64) { return 0.14, 20 + t/2 },
		"warm":   func(x, t float64) (float64, float64) { return 0.1 + 0.002*(60-t), 20 + 1.5*(60-t) },
	} {
		for _, f := range []searching{new(along), new(fixed)} {
			malt := []float64{0.14, 40}
			rounds := 0
			for ; rounds < mostRounds; rounds++ {
				x, temperature := g(malt[0], malt[1])
				came := []float64{x, temperature}
				if near(misses(malt, came)) {
					break
				}
				malt = f.next(malt, came)
			}
			assert.Less(t, rounds, 11, "%s %T", name, f)
			x, _ := g(malt[0], malt[1])
			assert.Less(t, math.Abs(x-malt[0]), nearMoisture, "%s %T", name, f)
		}
	}
}

func BenchmarkForecastOfTwoFloors(b *testing.B) {
	p := load(b, onFloors(tower, "dry for 18 h", below))
	b.ReportAllocs()
	for range b.N {
		if _, err := Run(p, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// A fan of 1 kW on the upper floor draws while air comes through the malt: behind the stage below, whose fire and
// fan then rest, it stands.
func TestTheFanOfAnUpperFloorRestsWithTheFloorBelow(t *testing.T) {
	house := strings.Replace(tower, `air from "lower floor"`, `air from "lower floor"; fan 1 kW`, 1)
	f := runText(t, onFloors(house, "dry for 14 h", "dry at air-on 60 °C for 7 h; cure at air-on 80 °C for 1 h"), Options{})
	require.NotNil(t, f.Kilns[0].Fed)
	assert.InDelta(t, 8*hour, f.Kilns[0].Fed.Below, 1)
	assert.InDelta(t, 8, f.Spent[0].Fans/3.6e6, 1e-3)
	own := strings.Replace(house, "fan 1 kW", "fan 1 kW; airflow 2000 m3/h", 1)
	f = runText(t, onFloors(own, "dry for 14 h", "dry at air-on 60 °C for 7 h; cure at air-on 80 °C for 1 h"), Options{})
	assert.InDelta(t, 14, f.Spent[0].Fans/3.6e6, 1e-3, "its own air goes on")
}
