package forecast

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// driven dries so much green malt on a kiln of which those facts are said.
func driven(t *testing.T, mass, facts, steps string) *Forecast {
	t.Helper()
	f, err := Run(load(t, fmt.Sprintf(`grain "green" { species barley; already green malt; moisture 44 %%; germination 98 %% }
site "barn" { air 10 to 14 °C; humidity 70 to 80 %%; altitude 0 m }
kiln "kiln" { %s; reaches 15 to 110 °C; fired gas by indirect }
process "p" {
 make pale malt
 from %s of "green"
 at "barn"
 kiln in "kiln" { %s }
}
`, facts, mass, steps)), Options{})
	require.NoError(t, err)
	require.False(t, f.BrokenOff(), "%v", f.Trouble)
	return f
}

const toTwelve = "dry at air-on 50 °C until moisture at most 12 % allow 6 to 48 h; cool to malt 30 °C"

// 150 kg of raw barley, some 225 kg of green malt, on 0.3 m² do not dry by what warm air draws,
// and the forecast says why: how deep it lies, what the air that it would take is lost in, what
// there is, how long it would be, and on what area it goes.
func TestAHeapUnderANaturalDraughtIsToldWhyItDoesNotDry(t *testing.T) {
	f := driven(t, "225 kg", "area 0.3 m2; draught natural", toTwelve)
	short := Troubles[AirShort](f)
	require.Len(t, short, 1)
	d := short[0].Driven
	require.NotNil(t, d)
	assert.Equal(t, ByDraught, d.By)
	assert.InDelta(t, 1.3, d.Depth, 0.15)
	assert.Less(t, d.Gives, 4.0)
	assert.Greater(t, d.Takes, 200.0)
	assert.Less(t, d.Passes, d.Needs/50)
	assert.Greater(t, d.Dries, 100*86400.0)
	assert.Less(t, d.Hardest, d.Needs, "nor would any chimney")
	assert.Greater(t, f.Totals.FinalMoisture, 0.40)
	assert.InDelta(t, 3, d.Area, 1.5)
	spread := driven(t, "225 kg", fmt.Sprintf("area %.2f m2; draught natural", 1.2*d.Area), toTwelve)
	assert.Empty(t, Troubles[AirShort](spread))
	assert.LessOrEqual(t, spread.Totals.FinalMoisture, 0.121)
	fan := driven(t, "225 kg", fmt.Sprintf("area 0.3 m2; draught fan; fan %.0f m3/h at %.0f Pa; fan %.0f m3/h at 0 Pa", d.Needs*3600*1.2, d.Takes*1.4, d.Needs*3600*3), toTwelve)
	assert.Empty(t, Troubles[AirShort](fan), "the fan that it asks for dries it")
	assert.LessOrEqual(t, fan.Totals.FinalMoisture, 0.121)
}

// What is written of the air of a natural draught holds, but for what none drives.
func TestAWrittenAirOfANaturalDraughtIsNoMoreThanOneDrives(t *testing.T) {
	thin := driven(t, "40 kg", "area 4 m2; draught natural; airflow 300 m3/h", toTwelve)
	assert.Nil(t, thin.Kilns[0].Airs, "as it is written")
	heap := driven(t, "225 kg", "area 0.3 m2; draught natural; airflow 900 m3/h", toTwelve)
	require.NotNil(t, heap.Kilns[0].Airs)
	assert.Less(t, heap.Kilns[0].Airs.Last*3600, 40.0)
	short := Troubles[KilnAirShort](heap)
	require.NotEmpty(t, short)
	assert.InDelta(t, DrawsHard, short[0].Gives, 1e-9)
	assert.Greater(t, heap.Totals.FinalMoisture, 0.3)
}

func TestAFanIsHeldAgainstTheMalt(t *testing.T) {
	const curve = "area 1 m2; draught fan; fan 1500 m3/h at 0 Pa; fan 900 m3/h at 300 Pa; fan 300 m3/h at 500 Pa"
	f := driven(t, "150 kg", curve, toTwelve)
	airs := f.Kilns[0].Airs
	require.NotNil(t, airs)
	assert.Equal(t, ByFan, airs.By)
	assert.Greater(t, airs.Last, 1.05*airs.First, "it shrinks as it dries")
	assert.Less(t, airs.Last*3600, 1500.0)
	assert.Less(t, f.Kilns[0].Dried, 0.8*f.Kilns[0].Depth)
	var told []DrivenAir
	for _, a := range f.Assumed {
		if a, ok := a.(DrivenAir); ok {
			told = append(told, a)
		}
		_, air := a.(KilnAir)
		assert.False(t, air, "nothing of its air is assumed beside")
	}
	require.Len(t, told, 1)
	assert.InEpsilon(t, airs.First, told[0].Flow, 0.1)
	assert.True(t, told[0].Draws)
	held := driven(t, "150 kg", curve+"; airflow 300 m3/h", toTwelve)
	assert.InEpsilon(t, 300.0/3600, held.Kilns[0].Airs.Least, 1e-6)
	assert.Empty(t, Troubles[KilnAirShort](held))
	over := driven(t, "150 kg", curve+"; airflow 1400 m3/h", toTwelve)
	require.NotEmpty(t, Troubles[KilnAirShort](over))
	assert.InEpsilon(t, f.Totals.KilnEnergy, over.Totals.KilnEnergy, 1e-3, "no more comes for that it is asked for")
}

// What is told of a chimney's air is of the first drying, once the green malt is warm: a later and hotter
// step draws more, and malt that is still cold hardly anything.
func TestTheAirOfAChimneyIsToldOfWarmGreenMalt(t *testing.T) {
	text := `grain "green" { species barley; already green malt; moisture 44 %; germination 98 % }
site "barn" { air 10 to 14 °C; humidity 70 to 80 %; altitude 0 m }
kiln "kiln" { area 4 m2; chimney 6 m; reaches 15 to 110 °C; fired gas by indirect }
process "p" { make pale malt
 from 300 kg of "green"
 at "barn"
 kiln in "kiln" { dry at air-on 45 °C for 8 h; dry at air-on 65 °C for 8 h; cool to malt 30 °C }
}
`
	f, err := Run(load(t, text), Options{Course: &Course{Looks: []float64{3 * hour}}})
	require.NoError(t, err)
	told := assumed[DrivenAir](f)
	require.Len(t, told, 1)
	assert.InDelta(t, 45, told[0].At, 1e-9)
	require.NotEmpty(t, f.Seen)
	assert.InEpsilon(t, f.Seen[0].Airflow, told[0].Flow, 0.08)
	assert.Less(t, f.Kilns[0].Airs.First, 0.6*told[0].Flow, "cold malt")
}

// More chimney, less malt or more area dry sooner.
func TestWhatDrawsMoreDriesSooner(t *testing.T) {
	hours := func(mass, facts string) float64 {
		st := driven(t, mass, facts, toTwelve).Stages[0].Steps[0]
		return (st.End - st.Start) / hour
	}
	base := hours("60 kg", "area 2 m2; draught natural; chimney 6 m")
	assert.Less(t, hours("60 kg", "area 2 m2; draught natural; chimney 12 m"), base)
	assert.Less(t, hours("60 kg", "area 4 m2; draught natural; chimney 6 m"), base)
	assert.Less(t, hours("40 kg", "area 2 m2; draught natural; chimney 6 m"), base)
	assert.Less(t, base, hours("60 kg", "area 2 m2; draught natural"), "a small house draws less than 6 m")
	assert.InEpsilon(t, base, hours("60 kg", "area 2 m2; chimney 6 m"), 1e-9, "a chimney alone is a natural draught")
}

// What a fan draws is reckoned from its air and its pressure, and as it is said where it is.
func TestWhatTheFanOfAKilnDraws(t *testing.T) {
	const curve = "area 1 m2; draught fan; fan 1500 m3/h at 0 Pa; fan 900 m3/h at 300 Pa"
	f := driven(t, "150 kg", curve, toTwelve)
	st := f.Stages[0].Steps
	hours := (st[len(st)-1].End - st[0].Start) / hour
	spent := f.Spent[0].Fans / 3.6e6
	// some 1000 m³/h at 250 Pa and half of it lost: 140 W
	assert.InDelta(t, 0.14*hours, spent, 0.04*hours)
	said := driven(t, "150 kg", curve+"; fan 500 W", toTwelve)
	st = said.Stages[0].Steps
	hours = (st[len(st)-1].End - st[0].Start) / hour
	assert.InEpsilon(t, 0.5*hours, said.Spent[0].Fans/3.6e6, 1e-3)
}
