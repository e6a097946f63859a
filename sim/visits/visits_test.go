package visits

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

// nowhere reads no files.
type nowhere struct{}

func (nowhere) Read(string) ([]byte, error) { return nil, os.ErrNotExist }

// house is invented.
const house = `
grain "lot" { species barley; moisture 12 %; kernel-weight 45 g; germination 97 % of 100 kernels; treated no }
site "room" { air 14 °C; humidity 70 %; water 13 °C; altitude 0 m }
vessel "tub" { holds 40 l }
floor "tray" { area 0.4 m2 }
floor "box" { area 0.03 m2; airflow 4 m3/h; heater 0.5 kW; cooler 0.5 kW }
kiln "kiln" { area 0.5 m2; airflow 120 m3/h; reaches 20 to 110 °C; heater 5 kW; fired electric }
`

const (
	steepText = `steep in "tub" { soak 7 h in water at 14 °C; rest 9 h in air at 14 °C; soak 7 h in water at 14 °C; soak 6 h in water at 14 °C; rest 2 h in air at 14 °C }
`
	growText = `germinate on "tray" { hold bed at 14 to 16 °C for 2 days; hold bed at 12 to 14 °C; turn every 8 h; sprinkle 0.2 l every 24 h; until acrospire at least 3/4; allow 3 to 8 days; humidity 98 % }
`
	kilnText = `kiln in "kiln" { stir every 2 h; dry at air-on 50 °C until moisture at most 20 % allow 2 to 24 h; dry at air-on 60 °C until moisture at most 10 % allow 0 to 24 h; gate moisture at most 10 %; cure at air-on 80 °C for 5 h; gate moisture at most 3.8 %; cool to malt 30 °C }
deculm within 12 h
store in "drum" for at least 3 weeks
`
)

func forecastOf(t *testing.T, body string) *forecast.Forecast {
	t.Helper()
	text := house + "process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n" + body + "}\n"
	h, found := read.Load("test.malt", []byte(text), ".", nowhere{})
	for _, f := range found {
		require.Less(t, f.Severity, finding.Fault, "%s: %s", f.Place.Text(), f.Message)
	}
	f, err := forecast.Run(h.Processes[0], forecast.Options{})
	require.NoError(t, err)
	require.False(t, f.BrokenOff(), "%v", f.Trouble)
	return f
}

func count(list []Task, kind Kind) (n int) {
	for _, t := range list {
		if t.Kind == kind {
			n++
		}
	}
	return n
}

func TestEveryStageHasItsVisits(t *testing.T) {
	list := List(forecastOf(t, steepText+growText+kilnText))
	for kind, n := range map[Kind]int{
		Fill: 3, Drain: 3, EndRest: 1, Spread: 1, Change: 1, EndFloor: 1, Load: 1, Heat: 2, Gate: 2,
		Cool: 1, Unload: 1, Deculm: 1, Put: 1, Rested: 1,
	} {
		assert.Equal(t, n, count(list, kind), kind)
	}
	assert.True(t, slices.IsSortedFunc(list, func(a, b Task) int {
		switch {
		case a.At < b.At:
			return -1
		case a.At > b.At:
			return 1
		}
		return 0
	}))
}

// The same turns that the model makes: as many as whole intervals lie within.
func TestTurnsSprinklingsAndStirringsComeAtTheirIntervals(t *testing.T) {
	f := forecastOf(t, steepText+growText+kilnText)
	list := List(f)
	grown := f.Stages[1].Steps
	grew := grown[len(grown)-1].End - grown[0].Start
	assert.Equal(t, int(math.Ceil(grew/(8*hour)))-1, count(list, Turn))
	assert.Equal(t, int(math.Ceil(grew/(24*hour)))-1, count(list, Sprinkle))
	steps := f.Stages[2].Steps
	hot := steps[len(steps)-1].Start - steps[0].Start
	assert.Equal(t, int(math.Ceil(hot/(2*hour)))-1, count(list, Stir))
}

func TestNobodyLooksBeforeTheEarliestTimeOrAfterTheEnd(t *testing.T) {
	f := forecastOf(t, steepText+growText+kilnText)
	grown := f.Stages[1].Steps
	earliest, end := grown[0].Start+3*day, grown[len(grown)-1].End
	n := 0
	for _, x := range List(f) {
		if x.Kind == Look && x.Stage == model.GerminateStage {
			assert.GreaterOrEqual(t, x.At, earliest)
			assert.Less(t, x.At, end)
			assert.InDelta(t, end, x.At+x.Waits, 1e-6, "it may wait until the condition is expected to hold")
			n++
		}
	}
	assert.Positive(t, n)
}

func TestTheScaleAtAVisitIsThatOfTheForecast(t *testing.T) {
	f := forecastOf(t, steepText+growText+kilnText)
	list := List(f)
	first := list[0]
	assert.Equal(t, Fill, first.Kind)
	assert.InDelta(t, 5, first.Weight, 1e-12)
	assert.InDelta(t, 0.12, first.Moisture, 1e-12)
	for _, x := range list {
		switch x.Kind {
		case Load:
			grown := f.Stages[1].Steps
			assert.Equal(t, grown[len(grown)-1].WeightEnd, x.Weight)
		case Put:
			assert.InDelta(t, f.Totals.Malt, x.Weight, 1e-9)
			assert.InDelta(t, f.Totals.Total, x.At, 1e-6)
		}
	}
}

// What is drained lay in the vessel, what comes onto the kiln on the floor before it; raw
// grain and clean malt lie in nothing.
func TestAVisitKnowsWhatTheGrainLayInUntilThen(t *testing.T) {
	in := map[Kind][]string{}
	for _, x := range List(forecastOf(t, steepText+growText+kilnText)) {
		name := ""
		if x.In != nil {
			name = x.In.Name
		}
		in[x.Kind] = append(in[x.Kind], name)
		if math.IsNaN(x.Weight) {
			assert.Nil(t, x.In, x.Kind)
		}
	}
	assert.Equal(t, []string{"", "tub", "tub"}, in[Fill])
	assert.Equal(t, []string{"tub", "tub", "tub"}, in[Drain])
	assert.Equal(t, []string{"tub"}, in[Spread])
	assert.Equal(t, []string{"tray"}, in[EndFloor])
	assert.Equal(t, []string{"tray"}, in[Load])
	assert.Equal(t, []string{"kiln"}, in[Unload])
	assert.Equal(t, []string{"kiln"}, in[Deculm])
	assert.Equal(t, []string{""}, in[Put])
}

func TestTasksOfOneMinuteAreOneVisit(t *testing.T) {
	list := List(forecastOf(t, steepText+growText+kilnText))
	got := Gather(list)
	n := 0
	for i, v := range got {
		n += len(v.Tasks)
		for _, x := range v.Tasks {
			assert.Less(t, x.At-v.At, together)
			assert.GreaterOrEqual(t, x.Waits, v.Waits)
		}
		if i > 0 {
			assert.GreaterOrEqual(t, v.At-got[i-1].At, together)
		}
	}
	assert.Equal(t, len(list), n)
	assert.Less(t, len(got), n)
}

// A gate is weighed for before the next step is set.
func TestAGateComesBeforeWhatItIsTheGateOf(t *testing.T) {
	for _, v := range Gather(List(forecastOf(t, steepText+growText+kilnText))) {
		for i, x := range v.Tasks {
			if x.Kind == Gate {
				for _, before := range v.Tasks[:i] {
					assert.Contains(t, []Kind{Drain, Look}, before.Kind)
				}
			}
		}
	}
}

func TestAProcessThatEndsWithTheRootletsIsReadyWhenTheyAreOff(t *testing.T) {
	f := forecastOf(t, steepText+growText+`kiln in "kiln" { dry at air-on 55 °C until moisture at most 8 % allow 2 to 40 h }
deculm within 12 h
`)
	list := List(f)
	last := list[len(list)-1]
	assert.Equal(t, Put, last.Kind)
	assert.InDelta(t, f.Totals.Total, last.At, 1e-6)
}

func TestAGateBehindTheGrowthIsLookedAtOnceTheGrowthIsAtItsEnd(t *testing.T) {
	f := forecastOf(t, steepText+strings.Replace(growText, "until acrospire at least 3/4;", "gate acrospire at least 3/4 allow 0 to 3 days; until acrospire at least 1/2;", 1)+kilnText)
	var until, gate []float64
	for _, x := range List(f) {
		switch {
		case x.Stage != model.GerminateStage:
		case x.Kind == Look && x.Until == "acrospire at least 1/2":
			until = append(until, x.At)
		case x.Until == "acrospire at least 3/4":
			gate = append(gate, x.At)
		}
		assert.False(t, x.Kind == EndFloor && x.Until == "acrospire at least 1/2", "it is the gate that lets it go")
	}
	require.Len(t, gate, 2, "as the wait begins, and as it ends")
	for _, at := range until {
		assert.LessOrEqual(t, at, gate[0], "what held is not looked for any more")
	}
	assert.Greater(t, gate[1], gate[0]+6*hour)
}

func TestAPumpBlowsTheAirAndNobodyComes(t *testing.T) {
	with := strings.Replace(steepText, "{", "{ aerate every 2 h for 10 min;", 1)
	still, blown := forecastOf(t, steepText+growText+kilnText), forecastOf(t, with+growText+kilnText)
	steeped := func(f *forecast.Forecast) (list []string) {
		for _, v := range List(f) {
			if v.Stage == model.SteepStage {
				list = append(list, v.Name)
			}
		}
		return list
	}
	assert.NotEmpty(t, steeped(still))
	assert.Equal(t, steeped(still), steeped(blown))
}

// Each of several stages has its own vessel, floor, kiln and turns.
func TestEachOfSeveralStagesIsVisited(t *testing.T) {
	f := forecastOf(t, steepText+`germinate on "tray" { hold bed at 15 °C; turn every 5 h; for 20 h; humidity 98 % }
`+`steep { soak 2 h in water at 14 °C }
germinate on "tray" { hold bed at 15 °C; turn every 8 h; for 3 days; humidity 98 % }
kiln in "kiln" { dry at air-on 60 °C until moisture at most 10 % allow 0 to 40 h; gate moisture at most 10 % }
kiln in "kiln" { cure at air-on 80 °C for 4 h }
`)
	list := List(f)
	where := func(kind Kind) (names []string) {
		for _, x := range list {
			if x.Kind == kind {
				names = append(names, x.Where)
			}
		}
		return names
	}
	assert.Equal(t, []string{"tub", "tub", "tub", ""}, where(Fill))
	assert.Equal(t, []string{"tray", "tray"}, where(Spread))
	assert.Equal(t, []string{"kiln", "kiln"}, where(Load))
	assert.Equal(t, []string{"kiln", "kiln"}, where(Unload))
	assert.Equal(t, 3+8, count(list, Turn), "every 5 h for 20 h, and every 8 h for 3 days")
	assert.Equal(t, 1, count(list, Gate), "the gate of one kiln is not that of another")
}

func TestAMachineTurnsThePieceAndNobodyComes(t *testing.T) {
	by := strings.Replace(growText, "turn every 8 h", "turn every 8 h by machine", 1)
	hand, machine := List(forecastOf(t, steepText+growText+kilnText)), List(forecastOf(t, steepText+by+kilnText))
	assert.Positive(t, count(hand, Turn))
	assert.Zero(t, count(machine, Turn))
	assert.Positive(t, count(machine, Look), "somebody still looks how it grows")
	assert.Equal(t, count(hand, Sprinkle), count(machine, Sprinkle))
}

func TestSomebodySprinklesWhenTheBedIsDryAndAFanNeedsNobody(t *testing.T) {
	const box = `germinate on "box" { hold bed at 14 to 16 °C; air at air-on 13 °C when bed above 15 °C; air at air-on 14 °C for 10 min every 2 h; sprinkle 20 l/t when moisture below 42 %; for 5 days }
`
	f := forecastOf(t, steepText+box+kilnText)
	require.NotEmpty(t, f.Sprinkled)
	list := List(f)
	grown := slices.DeleteFunc(list, func(v Task) bool { return v.Stage != model.GerminateStage })
	assert.Equal(t, len(f.Sprinkled), count(grown, Sprinkle))
	for _, v := range grown {
		switch v.Kind {
		case Sprinkle:
			assert.Equal(t, "0.1 l", v.Water.String(), "20 l/t of 5 kg")
		default:
			assert.Contains(t, []Kind{Spread, EndFloor}, v.Kind)
		}
	}
}

// Whatever warms or cools a bed does so by itself.
func TestNobodyComesForAHeater(t *testing.T) {
	process := steepText + growText + kilnText
	plain := List(forecastOf(t, process))
	text := strings.Replace(house, "floor \"tray\" { area 0.4 m2 }", "floor \"tray\" { area 0.4 m2; heater 300 W; cooler 300 W }", 1)
	require.NotEqual(t, house, text)
	h, _ := read.Load("test.malt", []byte(text+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+process+"}\n"), ".", nowhere{})
	f, err := forecast.Run(h.Processes[0], forecast.Options{})
	require.NoError(t, err)
	require.Positive(t, f.Totals.BedHeat+f.Totals.BedCold)
	kinds := func(list []Task) map[Kind]bool {
		out := map[Kind]bool{}
		for _, one := range list {
			out[one.Kind] = true
		}
		return out
	}
	assert.Equal(t, kinds(plain), kinds(List(f)))
}
