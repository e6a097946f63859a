package forecast

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/kiln"
)

func kilnOf(t *testing.T, body string) *Forecast {
	t.Helper()
	return run1(t, steepText+growText+"kiln in \"kiln\" { "+body+"; cool to malt 30 °C }\n")
}

func TestKilnedTellsOfTheMaltOnTheKiln(t *testing.T) {
	f := kilnOf(t, "dry at air-on 50 °C until weight at most 5 kg allow 0 to 24 h; cure at air-on 80 °C for 5 h")
	k := f.FirstKiln()
	require.NotNil(t, k)
	assert.InDelta(t, 5*0.88, k.DryMass, 0.4, "some of the charge's dry matter is breathed away, none of it on the kiln")
	g := f.Gates[len(f.Gates)-1]
	require.True(t, g.Met)
	// the moment is found to within 6 s
	assert.InDelta(t, k.MoistureAt(5), g.Moisture, 1e-3)
	assert.Negative(t, k.MoistureAt(4), "less than its dry matter")
	assert.Greater(t, k.Depth, 0.01)
	assert.Less(t, k.Depth, 0.05, "a tray")
}

func TestTimeAboveTwentyPercentEndsThere(t *testing.T) {
	f := kilnOf(t, "dry at air-on 50 °C until moisture at most 20 % allow 0 to 24 h; dry at air-on 50 °C for 6 h")
	first := f.Stages[2].Steps[0]
	assert.InDelta(t, first.End-first.Start, f.FirstKiln().Wet, 600, "to within a look")
}

func TestBreakIsSeenInADeepBed(t *testing.T) {
	deep := strings.ReplaceAll(house, "area 0.5 m2; airflow 120 m3/h", "area 0.04 m2; airflow 25 m3/h")
	text := deep + "process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n" + steepText + growText +
		"kiln in \"kiln\" { dry at air-on 55 °C until break allow 1 to 48 h; cool to malt 30 °C }\n}\n"
	f, err := Run(load(t, text), Options{})
	require.NoError(t, err)
	last := f.Gates[len(f.Gates)-1]
	require.True(t, last.Met)
	assert.InDelta(t, last.Reached, f.FirstKiln().Break, 600, "to within a look")
	assert.True(t, math.IsNaN(kilnOf(t, "dry at air-on 50 °C for 1 h").FirstKiln().Break))
}

func airShort(f *Forecast) []AirShort { return Troubles[AirShort](f) }

// Air of 14 °C and 70 % holds 7 g of water a kilogram; warmed to 50 °C it leaves at
// 23 °C with 18 g when it is full (first principles). 120 m3/h of 50 °C are 131 kg/h,
// so they carry 1.4 kg/h at the most, and 5 kg of barley have some 3 kg to give off.
func TestAirThatCannotCarryTheWaterIsTold(t *testing.T) {
	short := airShort(kilnOf(t, "dry at air-on 50 °C until moisture at most 10 % allow 0 to 1.5 h"))
	require.Len(t, short, 1)
	assert.InDelta(t, 1.5*1.4, short[0].Carries, 0.25)
	assert.InDelta(t, 1.5*3600, short[0].Took, 1)
	assert.Empty(t, airShort(kilnOf(t, "dry at air-on 50 °C until moisture at most 10 % allow 0 to 24 h")), "it is met")
	assert.Empty(t, airShort(kilnOf(t, "dry at air-on 50 °C until moisture at most 3 % allow 0 to 10 h")), "the air could; the kernels are slow")
}

func TestStirringGoesOnFromStepToStep(t *testing.T) {
	stirred := 0
	ticks := []*tick{{every: 3 * 3600, next: 3 * 3600, do: func(physics) error { stirred++; return nil }}}
	r := &run{effort: effortOf(nil), f: &Forecast{Stages: []Stage{{}}}}
	for range 3 {
		require.NoError(t, r.through(still{&finished{}}, &model.Kilning{}, nil, stop{latest: 4 * 3600}, Step{}, ticks))
	}
	assert.Equal(t, 4, stirred, "every 3 h of 12 h")
}

func TestFirstStirringIsToldWithTheStateOfTheBed(t *testing.T) {
	s := kilnOf(t, "stir every 2 h; dry at air-on 50 °C for 8 h").FirstKiln().Stirred
	require.NotNil(t, s)
	assert.InDelta(t, 2*3600, s.At, 1)
	assert.False(t, s.Broken)
	assert.Greater(t, s.Moisture, WitheredMoisture)
	assert.Nil(t, kilnOf(t, "dry at air-on 50 °C for 8 h").FirstKiln().Stirred)
}

func TestKilnSetByTheMaltIsShortOfTheMalt(t *testing.T) {
	weak := strings.ReplaceAll(house, "heater 5 kW", "heater 0.5 kW")
	text := weak + "process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n" + steepText + growText +
		"kiln in \"kiln\" { dry at malt 60 °C for 6 h; cool to malt 30 °C }\n}\n"
	f, err := Run(load(t, text), Options{})
	require.NoError(t, err)
	short := Troubles[KilnShort](f)
	require.Len(t, short, 1)
	assert.Equal(t, kiln.Malt, short[0].Target)
	assert.InDelta(t, 60, short[0].Asked, 1e-9)
}

func TestMaltOfWhichOnlyThePartNextToTheAirGetsHotIsToldApart(t *testing.T) {
	hot := func(body string) HotWet {
		list := Troubles[HotWet](kilnOf(t, body))
		require.NotEmpty(t, list, "nothing is hot while wet")
		return list[0]
	}
	assert.True(t, hot("dry at malt 48 °C for 6 h").ByAir, "the mean stays below 50 °C")
	assert.False(t, hot("dry at malt 60 °C for 6 h").ByAir)
}

func TestAnAirOffThatIsMissedForHoursIsTold(t *testing.T) {
	short := Troubles[KilnShort](kilnOf(t, "dry at air-off 50 °C for 6 h"))
	require.Len(t, short, 1)
	assert.True(t, short[0].ByDrying())
	assert.Greater(t, short[0].Time, shortFor)
	assert.Less(t, short[0].Got, 50-shortBy)
	assert.Empty(t, Troubles[KilnShort](kilnOf(t, "dry at malt 48 °C for 6 h")), "malt takes its time")
}
