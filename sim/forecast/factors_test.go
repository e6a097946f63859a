package forecast

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
)

// twoOfEach is a process in the invented house, beside another lot and kiln.
func twoOfEach(t testing.TB, learnt string) *model.Process {
	t.Helper()
	return load(t, house+`
grain "other lot" { species barley }
kiln "other kiln" { area 0.5 m2 }
house "h" { `+learnt+` }
process "p" {
 make pale malt
 from 5 kg of "lot"
 at "room"
`+steepText+growText+kilnText+"}\n")
}

func forecastOf(t testing.TB, p *model.Process, o Options) *Forecast {
	t.Helper()
	f, err := Run(p, o)
	require.NoError(t, err)
	return f
}

func TestWhatWasLearntIsTheSameAsTheOption(t *testing.T) {
	for learnt, o := range map[string]Options{
		`growth 1.1`:              {Growth: new(1.1)},
		`respiration 0.8`:         {Respiration: new(0.8)},
		`uptake 1.2 of "lot"`:     {Uptake: new(1.2)},
		`husk-water 1.2 of "lot"`: {HuskWater: new(1.2)},
		`chit 0.7 of "lot"`:       {Chit: new(0.7)},
		`drying 0.9 of "kiln"`:    {Drying: new(0.9)},
	} {
		t.Run(learnt, func(t *testing.T) {
			want := forecastOf(t, twoOfEach(t, "thermometer 0.8 °C"), o)
			got := forecastOf(t, twoOfEach(t, learnt), Options{})
			assert.Equal(t, want.Totals, got.Totals)
			plain := forecastOf(t, twoOfEach(t, "thermometer 0.8 °C"), Options{})
			assert.NotEqual(t, plain.Totals, got.Totals, "it moves the forecast")
		})
	}
}

// Withering that is learnt counts on the floor, and in a box; nowhere else.
func TestWitheringThatWasLearntIsTheSameAsTheOption(t *testing.T) {
	const on = `wither on "tray" { air at 18 to 20 °C; humidity 60 %; for 12 h }` + "\n"
	process := func(learnt, stage string) *model.Process {
		return load(t, house+"house \"h\" { "+learnt+" }\nprocess \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+growText+stage+kilnText+"}\n")
	}
	want := forecastOf(t, process("thermometer 0.8 °C", on), Options{Withering: new(1.5)})
	got := forecastOf(t, process("withering 1.5", on), Options{})
	assert.Equal(t, want.Totals, got.Totals)
	assert.Equal(t, Withering, got.Learnt[0].Figure)
	plain := forecastOf(t, process("thermometer 0.8 °C", on), Options{})
	assert.Less(t, got.Stages[2].Steps[0].MoistureEnd, plain.Stages[2].Steps[0].MoistureEnd-0.005)
	none := forecastOf(t, process("withering 1.5", ""), Options{})
	assert.Empty(t, none.Learnt, "nothing withers")
}

func TestWhatWasLearntMultipliesTheOptions(t *testing.T) {
	want := forecastOf(t, twoOfEach(t, "thermometer 0.8 °C"), Options{Growth: new(0.5 * 2.5), Drying: new(0.5 * 3)})
	got := forecastOf(t, twoOfEach(t, `growth 0.5; drying 0.5 of "kiln"`), Options{Growth: new(2.5), Drying: new(3.0)})
	assert.Equal(t, want.Totals, got.Totals)
}

func TestWhatWasLearntOfAnotherLotOrKilnOrOfAThermometerIsNotUsed(t *testing.T) {
	plain := load(t, house+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+growText+kilnText+"}\n")
	want := forecastOf(t, plain, Options{})
	got := forecastOf(t, twoOfEach(t, `uptake 1.2 of "other lot"; husk-water 1.2 of "other lot"; chit 1.2 of "other lot"; drying 0.9 of "other kiln"; thermometer 0.8 °C`), Options{})
	assert.Equal(t, want.Totals, got.Totals)
	assert.Equal(t, want.Stages[0].Steps[0].MoistureEnd, got.Stages[0].Steps[0].MoistureEnd)
	assert.Equal(t, want.Assumed, got.Assumed)
	assert.Empty(t, got.Learnt)
}

func TestTheForecastSaysWhatItUsedOfWhatWasLearnt(t *testing.T) {
	f := forecastOf(t, twoOfEach(t, `growth 1.06 error 0.04; respiration 0.95; uptake 1.08 of "lot"; chit 0.8 of "lot"; husk-water 1.1 of "lot"; drying 0.91 error 0.05 of "kiln"`), Options{})
	var said []string
	var used []Used
	for _, a := range f.Assumed {
		if l, ok := a.(Learnt); ok {
			assert.Equal(t, "h", l.House)
			used = append(used, l.Used)
		}
	}
	for _, u := range f.Learnt {
		said = append(said, fmt.Sprintf("%s %s %s", u.Figure, u.Of, u.Factor.Value))
	}
	assert.Equal(t, []string{"uptake lot 1.08", "husk-water lot 1.1", "growth  1.06", "chit lot 0.8", "respiration  0.95", "drying kiln 0.91"}, said)
	assert.Equal(t, f.Learnt, used)
}

func TestAKilnThatIsUsedTwiceIsToldOnce(t *testing.T) {
	p := twoOfEach(t, `drying 0.91 of "kiln"`)
	again := *model.First[*model.Kilning](p)
	p.Stages = append(p.Stages[:3:3], &again)
	assert.Len(t, forecastOf(t, p, Options{}).Learnt, 1)
}

// A factor of one kiln slows that one alone, also where the forecast begins anew at the kiln.
func TestAFactorOfOneKilnMovesNoOther(t *testing.T) {
	p := runOn(t, steepText+growFor("tray", "for 4 days")+dryOn+cureOn, nil).Process
	kilns := model.Every[*model.Kilning](p)
	require.Len(t, kilns, 2)
	first, second := kilns[0].Kiln, kilns[1].Kiln
	require.NotSame(t, first, second)
	plain := forecastOf(t, p, Options{})
	both := forecastOf(t, p, Options{Drying: new(0.8)})
	own := Options{DryingOf: map[*model.Kiln]float64{first: 0.8, second: 0.8}}
	assert.Equal(t, both.Totals, forecastOf(t, p, own).Totals)
	later := Options{DryingOf: map[*model.Kiln]float64{second: 0.8}}
	slow := forecastOf(t, p, later)
	last := len(plain.Stages) - 1
	for plain.Stages[last].Kind != model.KilnStage {
		last--
	}
	assert.Equal(t, plain.Stages[:last], slow.Stages[:last])
	assert.NotEqual(t, plain.Stages[last], slow.Stages[last])
	dried, err := plain.Dried(later, nil)
	require.NoError(t, err)
	assert.Equal(t, slow.Totals, dried.Totals)
}
