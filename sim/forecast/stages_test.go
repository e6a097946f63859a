package forecast

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

// more are a second floor, which is like the first, and a second kiln.
const more = "floor \"box\" { area 0.4 m2; heater 200 W; cooler 200 W }\nkiln \"oven\" { area 0.25 m2; airflow 60 m3/h; reaches 20 to 110 °C; heater 5 kW; fired electric }\n"

func runOn(t testing.TB, body string, c *Course) *Forecast {
	t.Helper()
	f, err := Run(load(t, house+more+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+body+"}\n"), Options{Course: c})
	require.NoError(t, err)
	require.False(t, f.BrokenOff(), "%v", f.Trouble)
	return f
}

func growFor(floor, end string) string {
	return `germinate on "` + floor + `" { hold bed at 15 °C; turn every 8 h; ` + end + `; humidity 98 % }` + "\n"
}

const dryOn, cureOn = `kiln in "kiln" { dry at air-on 50 °C until moisture at most 20 % allow 0 to 24 h; dry at air-on 60 °C until moisture at most 10 % allow 0 to 24 h }
`, `kiln in "oven" { cure at air-on 80 °C for 5 h; cool to malt 30 °C }
`

// Moving a piece is a turn and no more: on two floors of a kind it grows as on one that is
// turned then.
func TestAPieceGrowsOnWhereItIsMoved(t *testing.T) {
	one := runOn(t, steepText+growFor("tray", "for 4 days")+kilnText, nil)
	two := runOn(t, steepText+growFor("tray", "for 2 days")+growFor("box", "for 2 days")+kilnText, nil)
	require.Len(t, two.Pieces, 2)
	assert.InDelta(t, one.Pieces[0].Acrospire, two.Pieces[1].Acrospire, 0.005)
	assert.InDelta(t, one.Totals.Malt, two.Totals.Malt, 0.005)
	assert.InDelta(t, one.Totals.Total, two.Totals.Total, 600)
	assert.Equal(t, []int{1, 2}, []int{two.Stages[1].Number, two.Stages[2].Number})
	assert.Equal(t, 2, two.Stages[2].Steps[0].Number)
	assert.Equal(t, "germinate 2", two.Process.Called(two.Stages[2].Of))
}

// Grain that is steeped again while it grows goes on from where it was: nothing of its
// clock, its chits or its losses is lost, and it drinks.
func TestGrowingGrainIsSteepedAgain(t *testing.T) {
	const wet = `steep in "tub" { soak 2 h in water at 14 °C }` + "\n"
	f := runOn(t, steepText+growFor("tray", "for 20 h")+wet+growFor("tray", "for 3 days")+kilnText, nil)
	grown, again := f.Pieces[0], f.Pieces[1]
	soak := f.Stages[2].Steps[0]
	assert.Equal(t, "soak 4", soak.Label, "soaks are counted through all steeps")
	assert.InDelta(t, f.Stages[1].Steps[0].MoistureEnd, soak.MoistureStart, 1e-9)
	assert.Greater(t, soak.MoistureEnd, soak.MoistureStart+0.01)
	assert.Less(t, soak.MoistureEnd, 0.52)
	assert.GreaterOrEqual(t, again.Chitted, grown.Chitted)
	assert.Greater(t, again.Acrospire, grown.Acrospire)
	dry := func(s Step) float64 { return s.WeightEnd * (1 - s.MoistureEnd) }
	assert.Less(t, dry(soak), dry(f.Stages[1].Steps[0]), "some is washed out, and it breathes")
	assert.Equal(t, soak.End, f.Totals.SteepOut)
	assert.Equal(t, soak.MoistureEnd, f.Totals.SteepOutMoisture)
	assert.InDelta(t, 4*1.5*5, f.Totals.SteepWater, 1e-9, "four soaks of 1.5 l for each of 5 kg")
}

// Two kilns in turn drive off the water of one, and the second heats malt that has lost
// its enzymes as far as the first took them.
func TestMaltGoesFromKilnToKiln(t *testing.T) {
	f := runOn(t, steepText+growFor("tray", "for 4 days")+dryOn+cureOn+"deculm within 12 h\n", nil)
	require.Len(t, f.Kilns, 2)
	first, second := f.Stages[2].Steps, f.Stages[3].Steps
	assert.Equal(t, first[len(first)-1].MoistureEnd, second[0].MoistureStart)
	assert.Less(t, second[0].MoistureEnd, 0.06)
	assert.InEpsilon(t, 2*f.Kilns[0].Dried, f.Kilns[1].Depth, 0.02, "on half the area it lies twice as deep")
	assert.Less(t, f.Kilns[0].Dried, 0.8*f.Kilns[0].Depth, "it shrank as it dried")
	green, malt := f.Stages[1].Steps[0].WeightEnd, second[len(second)-1].WeightEnd
	assert.InDelta(t, green-malt, f.Totals.KilnWater, 1e-6, "of both")
	assert.Less(t, f.Totals.Quality.Diastatic, 1.0)
	alone := runOn(t, steepText+growFor("tray", "for 4 days")+dryOn+"deculm within 12 h\n", nil)
	assert.Less(t, f.Totals.Quality.Precursor, alone.Totals.Quality.Precursor)
	assert.Greater(t, f.Totals.KilnEnergy, alone.Totals.KilnEnergy)
}

// What is taken for granted of one of several floors and kilns is told of each.
func TestAssumptionsNameTheirStage(t *testing.T) {
	f, err := Run(load(t, house+"kiln \"a\" { area 0.5 m2; fired electric }\nkiln \"b\" { area 0.5 m2; fired electric }\nprocess \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+growFor("tray", "for 4 days")+
		`kiln in "a" { dry at air-on 50 °C for 10 h }`+"\n"+`kiln in "b" { dry at air-on 60 °C for 10 h }`+"\n}\n"), Options{})
	require.NoError(t, err)
	var heaters, airs []string
	for _, a := range f.Assumed {
		switch a := a.(type) {
		case KilnHeater:
			heaters = append(heaters, a.Called)
		case KilnAir:
			airs = append(airs, a.Called)
		}
	}
	assert.Equal(t, []string{"kiln 1", "kiln 2"}, heaters)
	assert.Equal(t, heaters, airs)
}

// A record names a stage, a soak or a step by its number through the whole process.
func TestARecordEndsTheStageThatItNames(t *testing.T) {
	const wet = `steep in "tub" { soak 2 h in water at 14 °C }` + "\n"
	body := steepText + growFor("tray", "for 20 h") + wet + growFor("tray", "until acrospire at least 3/4; allow 1 to 8 days") + dryOn + cureOn
	plain := runOn(t, body, nil)
	cast := plain.Stages[0].Steps[4].End
	f := runOn(t, body, &Course{Ends: []Ended{
		{Kind: "germinate", Number: 1, At: cast + 30*hour, Exact: true},
		{Kind: "soak", Number: 4, At: cast + 33*hour, Exact: true},
		{Kind: "germinate", Number: 2, At: cast + 120*hour, Exact: true},
	}})
	assert.InDelta(t, cast+30*hour, f.Stages[1].Steps[0].End, 1)
	assert.InDelta(t, cast+33*hour, f.Stages[2].Steps[0].End, 1)
	assert.InDelta(t, cast+120*hour, f.Stages[3].Steps[0].End, 1)
	assert.Equal(t, ByRecord, f.Stages[3].Steps[0].EndedBy)
	assert.Equal(t, len(steps(plain)), len(steps(f)), "an end that is of one stage ends no other")

	second := runOn(t, body, &Course{Changes: []model.Change{{Step: model.StepName{Kind: model.Word{Text: "germinate"}, Number: 1}, To: hours(t, "26")}}})
	assert.InDelta(t, 26*hour, second.Stages[1].Steps[0].End-second.Stages[1].Steps[0].Start, 1)
	assert.Greater(t, second.Stages[3].Steps[0].End-second.Stages[3].Steps[0].Start, 40*hour)
}

// Holds are counted as they are written, also where one is not come to.
func TestHoldsAreCountedThroughAllFloors(t *testing.T) {
	body := steepText + `germinate on "tray" { hold bed at 15 °C for 2 days; hold bed at 14 °C; for 1 day; turn every 8 h; humidity 98 % }
germinate on "box" { hold bed at 16 °C for 1 day; hold bed at 17 °C; for 3 days; turn every 8 h; humidity 98 % }
` + kilnText
	f := runOn(t, body, nil)
	require.Len(t, f.Stages[1].Steps, 1, "the stage is over in its first hold")
	require.Len(t, f.Stages[2].Steps, 2)
	assert.Equal(t, []int{3, 4}, []int{f.Stages[2].Steps[0].Nth, f.Stages[2].Steps[1].Nth})
}

// hours is a time as a record changes one.
func hours(t testing.TB, number string) model.Temperature {
	t.Helper()
	q, err := quantity.Make(quantity.Part{Number: number, Unit: "h"})
	require.NoError(t, err)
	return model.Temperature{Range: model.Range{Range: quantity.Range{Low: q, High: q}}}
}
