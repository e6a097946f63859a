package forecast

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/kiln"
)

const roasterText = `site "room" { air 18 °C; humidity 60 %; water 12 °C; altitude 0 m }
kiln "roaster" { holds 20 l; tumbles yes; airflow 4 m3/h; heater 2 kW; reaches 60 to 260 °C; fired electric }
kiln "oven" { area 0.2 m2; draught still; heater 3 kW; reaches 50 to 250 °C; airflow 4 m3/h }
grain "pale" { species barley; already kilned malt; moisture 4.5 % }
grain "green" { species barley; already green malt; moisture 44 %; treated no }
`

// roasted forecasts malt of a lot in the drum.
func roasted(t testing.TB, make, lot, body string, o Options) *Forecast {
	t.Helper()
	f, err := Run(load(t, roasterText+fmt.Sprintf("process \"p\" {\n make %s malt\n from 4 kg of %q\n at \"room\"\n%s\n}\n", make, lot, body)), o)
	require.NoError(t, err)
	require.False(t, f.BrokenOff(), "%v", f.Trouble)
	return f
}

// Amber malt is roasted for 45 to 50 min, a home practice: the drum must be at it within them, and no
// dry matter is lost.
func TestBoughtMaltIsRoasted(t *testing.T) {
	f := roasted(t, "amber", "pale", `kiln in "roaster" { roast at malt 150 °C for 50 min; cool to malt 30 °C with water 50 ml }`, Options{})
	assert.Nil(t, f.Beyond)
	roast := f.Stages[0].Steps[0]
	assert.Equal(t, model.RoastStep, roast.Kind)
	assert.InDelta(t, 50*60, roast.End-roast.Start, 1e-6)
	assert.InDelta(t, 0.045, roast.MoistureStart, 1e-9)
	assert.Less(t, roast.MoistureEnd, 0.03)
	assert.InDelta(t, 1, f.Totals.YieldDry, 1e-9, "it has no rootlets to lose")
	assert.Zero(t, f.Totals.Rootlets)
	assert.True(t, math.IsNaN(f.Totals.Quality.Colour) && math.IsNaN(f.Totals.Quality.Diastatic), "nobody knows what it had")
	q := Troubles[Quenched](f)
	require.Len(t, q, 1)
	assert.InDelta(t, 150, q[0].Before, 1)
	assert.InDelta(t, 0.05, q[0].Steam, 1e-9)
	// the balance of its water: what it had against what it has and what the heat drove off; what was
	// poured is steam, and no heater made it
	v := f.Totals
	assert.InDelta(t, 4*0.045, v.KilnWater+v.Malt*v.FinalMoisture, 1e-6)
	assert.InDelta(t, v.KilnWater, v.Energy.Water, 1e-9)
}

// Above 180 °C nothing but times is told, in whatever follows: they are as written, and the malt is cooled.
func TestAboveTheModelTimesGoOn(t *testing.T) {
	body := `kiln in "roaster" { roast at malt 215 °C for 50 min; gate moisture at most 3 %; cool to malt 30 °C with water 0.2 l }
 store in "sack" for 3 weeks
 expect yield at least 80 %
 expect total time at most 5 h`
	f := roasted(t, "chocolate", "pale", body, Options{Course: &Course{Looks: []float64{60, 2400, 3000 + 7200}, AtEnds: true}})
	require.NotNil(t, f.Beyond)
	assert.Greater(t, f.Beyond.At, 60.0)
	assert.Less(t, f.Beyond.At, 3000.0)
	steps := f.Stages[0].Steps
	assert.InDelta(t, 3000, steps[0].End, 1e-6)
	assert.Greater(t, steps[len(steps)-1].End, 3000.0+300)
	assert.InDelta(t, 0.045, steps[0].MoistureStart, 1e-9, "what was before is known")
	q := f.Totals.Quality
	for what, v := range map[string]float64{"moisture": f.Totals.FinalMoisture, "malt": f.Totals.Malt, "yield": f.Totals.Yield, "dry": f.Totals.YieldDry, "lost": f.Totals.DryMatterLost,
		"rootlets": f.Totals.Rootlets, "water": f.Totals.KilnWater, "heat": f.Totals.KilnEnergy, "end": steps[0].MoistureEnd, "weight": steps[0].WeightEnd,
		"colour": q.Colour, "enzymes": q.Diastatic, "alpha": q.Alpha, "precursor": q.Precursor} {
		assert.True(t, math.IsNaN(v), "%s is %v", what, v)
	}
	assert.False(t, math.IsNaN(f.Totals.Total))
	assert.Zero(t, f.Totals.Energy.PassedOn, "no floor gave it any")
	assert.Zero(t, f.Totals.Energy.Recovered, "it has no heat exchanger")
	require.Len(t, f.Gates, 1)
	assert.True(t, f.Gates[0].Met && f.Gates[0].Unjudged)
	assert.InDelta(t, 0, f.Gates[0].Waited, 1e-6, "nobody waits for what cannot be told")
	require.Len(t, f.Expects, 2)
	assert.True(t, f.Expects[0].Unjudged)
	assert.True(t, f.Expects[1].Holds && !f.Expects[1].Unjudged, "a time is a time")
	q1 := Troubles[Quenched](f)[0]
	assert.True(t, q1.Beyond && !q1.Wets() && !q1.Lacks(), "a fifth of a litre ends the roast")
	for _, s := range f.Seen {
		switch {
		case s.At < f.Beyond.At:
			assert.False(t, s.Beyond || math.IsNaN(s.Malt+s.Moisture+s.Weight))
		case s.Stage == model.KilnStage && s.At == 2400:
			assert.True(t, s.Beyond && math.IsNaN(s.Malt) && math.IsNaN(s.AirOff) && math.IsNaN(s.Weight), "%+v", s)
		case s.At > 9000:
			assert.True(t, s.Beyond && math.IsNaN(s.Weight))
		}
	}
}

func TestAConditionThatCannotBeJudgedEndsItsStep(t *testing.T) {
	f := roasted(t, "black", "pale", `kiln in "roaster" { roast at malt 230 °C until moisture at most 0.1 % allow 10 to 90 min; cool to malt 30 °C }`, Options{})
	roast := f.Stages[0].Steps[0]
	assert.Equal(t, ByGate, roast.EndedBy)
	assert.InDelta(t, f.Beyond.At, roast.End, 600)
	assert.True(t, f.Gates[0].Unjudged)
}

// On a tray the hottest of the malt counts, and a second kiln knows no more of it than the first.
func TestWhatIsNotForecastStaysSo(t *testing.T) {
	f := roasted(t, "black", "pale", `kiln in "oven" { stir every 10 min; roast at malt 210 °C for 2 h; cool to malt 40 °C }
 kiln in "roaster" { dry at air-on 70 °C for 1 h; cool to malt 30 °C }`, Options{})
	require.NotNil(t, f.Beyond)
	assert.Equal(t, f.Process.Stages[0], model.Stage(f.Beyond.Of))
	for _, st := range f.Stages[1:] {
		for _, s := range st.Steps {
			assert.True(t, math.IsNaN(s.MoistureEnd) && math.IsNaN(s.MoistureStart))
			assert.Greater(t, s.End, s.Start)
		}
	}
}

// Caramel of green malt in a drum: the stew keeps its water, since its flaps are shut; what dries behind it is
// bounded by its heat, 2.4 MJ for each kg of water; its colour is not forecast beyond 120 °C.
func TestCaramelIsStewedAndDriedInADrum(t *testing.T) {
	f := roasted(t, "caramel", "green", `kiln in "roaster" { stew at malt 68 °C for 90 min; dry at air-on 107 °C until moisture at most 8 % allow 1 to 12 h; roast at malt 140 °C for 30 min; cool to malt 30 °C }
 deculm`, Options{})
	stew, dry := f.Stages[0].Steps[0], f.Stages[0].Steps[1]
	assert.Greater(t, stew.MoistureEnd, 0.43)
	assert.Equal(t, ByGate, dry.EndedBy)
	water := stew.WeightEnd - dry.WeightEnd
	assert.Greater(t, (dry.End-dry.Start)*2000, 2.26e6*water, "no faster than its heater")
	assert.Less(t, dry.End-dry.Start, 6*3600.0)
	assert.True(t, math.IsNaN(f.Totals.Quality.Colour))
	assert.False(t, math.IsNaN(f.Totals.Quality.Diastatic+f.Totals.FinalMoisture))
	cool := roasted(t, "caramel", "green", `kiln in "roaster" { stew at malt 68 °C for 90 min; dry at air-on 107 °C until moisture at most 5 % allow 1 to 12 h; cool to malt 30 °C }
 deculm`, Options{})
	assert.Greater(t, cool.Totals.Quality.Colour, 20.0, "up to 107 °C it was set on caramel malt")
}

func TestDrumThatSaysNothingIsAssumed(t *testing.T) {
	text := strings.NewReplacer("airflow 4 m3/h; heater 2 kW; reaches 60 to 260 °C", "heater 2 kW; reaches 60 to 260 °C").Replace(roasterText)
	f, err := Run(load(t, text+"process \"p\" {\n make amber malt\n from 4 kg of \"pale\"\n at \"room\"\n kiln in \"roaster\" { roast at malt 150 °C for 50 min; cool to malt 30 °C }\n}\n"), Options{})
	require.NoError(t, err)
	assert.Contains(t, f.Assumed, Assumption(DrumAir{4.0 / 3600, kiln.DrumVent, ""}))
	assert.Empty(t, Troubles[DrumFull](f))
	full := roasted(t, "amber", "pale", `kiln in "roaster" { roast at malt 150 °C for 50 min; cool to malt 30 °C }`, Options{})
	assert.Empty(t, Troubles[DrumFull](full))
}

func TestMoreWaterThanMaltCanTakeIsRefusedWhereItStands(t *testing.T) {
	f, err := Run(load(t, roasterText+"process \"p\" {\n make black malt\n from 4 kg of \"pale\"\n at \"room\"\n kiln in \"roaster\" { roast at malt 215 °C for 40 min; cool to malt 30 °C with water 9 l }\n expect yield at least 80 %\n}\n"), Options{})
	require.NoError(t, err)
	list := Troubles[Unable](f)
	require.Len(t, list, 1)
	assert.Equal(t, "with water 9 l", "with water "+list[0].Place.Text())
	assert.ErrorContains(t, list[0].Cause, "water poured on the malt")
	var much MuchWater
	require.ErrorAs(t, list[0].Cause, &much)
	assert.InDelta(t, 215, much.Before, 1)
	assert.InDelta(t, 4*0.955*1700*115/2.61e6, much.Enough, 0.005, "of its dry matter")
	assert.True(t, f.Expects[0].Unjudged, "what it broke off behind was not forecast")
}

// By hand: 4 kg at 4.5 % hold 3.82 kg of dry matter, which give 1.3·3.82·115 = 571 kJ from 215 °C to the boil: 0.22 l of
// 2.6 MJ boil off, and of 2 l the rest makes it 1.78/(3.82 + 1.78), a third, of water.
func TestWaterOnMaltBeyondTheModelIsReckonedByItsHeat(t *testing.T) {
	q := func(water string) Quenched {
		f := roasted(t, "black", "pale", `kiln in "roaster" { roast at malt 215 °C for 50 min; cool to malt 30 °C with water `+water+` }`, Options{})
		list := Troubles[Quenched](f)
		require.Len(t, list, 1)
		require.True(t, list[0].Beyond)
		return list[0]
	}
	flood := q("2 l")
	assert.True(t, flood.Wets())
	assert.InDelta(t, 0.22, flood.Steam, 0.02)
	assert.InDelta(t, 0.32, flood.Moisture, 0.02)
	assert.InDelta(t, 4*0.955*1700*115/2.61e6, flood.Enough, 0.005)
	sip := q("50 ml")
	assert.True(t, sip.Lacks())
	assert.Greater(t, sip.After, 180.0)
}

// A roast that ends below its heat is told, whatever little time it had; one that is led up to its heat step by step is not.
func TestRoastThatDoesNotComeToItsHeatIsTold(t *testing.T) {
	late := func(body string) []KilnShort {
		return Troubles[KilnShort](roasted(t, "brown", "pale", body, Options{}))
	}
	list := late(`kiln in "roaster" { roast at malt 170 °C for 3 min; cool to malt 30 °C }`)
	require.Len(t, list, 1)
	assert.True(t, list[0].Late)
	assert.InDelta(t, 170, list[0].Asked, 1e-9)
	assert.Less(t, list[0].Got, 100.0)
	assert.Empty(t, late(`kiln in "roaster" { roast at malt 150 °C for 40 min; cool to malt 30 °C }`))
	assert.Empty(t, late(`kiln in "roaster" { roast from malt 100 to 170 °C over 5 min; roast at malt 170 °C for 40 min; cool to malt 30 °C }`))
	assert.Empty(t, late(`kiln in "roaster" { roast at malt 170 °C until moisture at most 4.4 % allow 0 to 60 min; cool to malt 30 °C }`), "it ended when it was ready")
}

// Malt that leaves the model while it waits for another kiln is told of from then on.
func TestMaltThatLeavesTheModelAsItWaitsIsToldOf(t *testing.T) {
	text := roasterText + `kiln "attic" { area 0.4 m2; air from "furnace"; airflow 60 m3/h }
kiln "furnace" { area 0.4 m2; airflow 60 m3/h; heater 12 kW; reaches 60 to 260 °C; fired electric }
process "p" {
 make black malt
 from 4 kg of "pale"
 at "room"
 kiln in "attic" { dry until moisture at most 8 % allow 0 to 10 min }
 kiln in "furnace" { stir every 10 min; roast at air-on 240 °C for 3 h; cool to malt 30 °C }
}
`
	f, err := Run(load(t, text), Options{})
	require.NoError(t, err)
	require.NotNil(t, f.Beyond)
	for _, st := range f.Stages {
		for _, s := range st.Steps {
			if math.IsNaN(s.MoistureEnd) {
				assert.GreaterOrEqual(t, s.End, f.Beyond.At-1e-6, "%s %s", st.Kind, s.Label)
			}
		}
	}
}
