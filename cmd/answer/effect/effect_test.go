package effect

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/answer/outlook"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

func said(messages ...string) (list []finding.Finding) {
	for _, m := range messages {
		list = append(list, finding.Finding{Rule: "a-rule", Message: m})
	}
	return list
}

func kinds(list []Finding) (out []string) {
	for _, f := range list {
		out = append(out, string(f.Kind)+" "+f.Message)
	}
	return out
}

func TestFindingsOfOneSideAlone(t *testing.T) {
	assert.Empty(t, Findings(said("a", "b"), said("b", "a")), "the order makes no difference")
	assert.Equal(t, []string{"went b", "came c", "came d"}, kinds(Findings(said("a", "b"), said("c", "a", "d"))))
	assert.Equal(t, []string{"went a"}, kinds(Findings(said("a", "a", "a"), said("a", "a"))), "one of several that say the same")
	assert.Equal(t, []string{"came a"}, kinds(Findings(said("a"), said("a", "a"))))
}

func asked(texts ...string) (list []outlook.Gate) {
	for _, text := range texts {
		list = append(list, outlook.Gate{StageName: outlook.StageName{Stage: "kiln"}, Text: text, Met: true, Reached: 3600})
	}
	return list
}

func TestGatesAreMatchedByWhatTheyAskAndThenByTheirStage(t *testing.T) {
	pairs := func(list []Gates) (out [][2]string) {
		for _, g := range list {
			var texts [2]string
			if g.Old != nil {
				texts[0] = g.Old.Text
			}
			if g.New != nil {
				texts[1] = g.New.Text
			}
			out = append(out, texts)
		}
		return out
	}
	assert.Equal(t, [][2]string{{"25 %", "25 %"}, {"10 %", "10 %"}}, pairs(gates(asked("25 %", "10 %"), asked("25 %", "10 %"))))
	assert.Equal(t, [][2]string{{"25 %", "22 %"}, {"10 %", "10 %"}}, pairs(gates(asked("25 %", "10 %"), asked("22 %", "10 %"))), "one that asks for something else")
	assert.Equal(t, [][2]string{{"25 %", ""}, {"10 %", "10 %"}}, pairs(gates(asked("25 %", "10 %"), asked("10 %"))), "gone, where it stood")
	assert.Equal(t, [][2]string{{"10 %", "10 %"}, {"", "5 %"}}, pairs(gates(asked("10 %"), asked("10 %", "5 %"))))
	other := asked("10 %")
	other[0].Stage = "wither"
	assert.Equal(t, [][2]string{{"", "10 %"}, {"10 %", ""}}, pairs(gates(asked("10 %"), other)), "of another stage")
	second := asked("10 %")
	second[0].Stage, second[0].Number = "kiln", 2
	first := asked("10 %")
	first[0].Stage, first[0].Number = "kiln", 1
	assert.Equal(t, [][2]string{{"10 %", "10 %"}}, pairs(gates(first, second)), "a kiln came before it")
}

func TestWhatASideDoesNotHaveIsNotKnown(t *testing.T) {
	green := &forecast.Forecast{Process: &model.Process{}, Totals: forecast.Totals{SteepOut: math.NaN(), Malt: 5}}
	e := compared(green, green)
	assert.True(t, e.Complete)
	assert.True(t, math.IsNaN(float64(e.Colour.Old)) && math.IsNaN(float64(e.SteepOut.New)), "neither kiln nor steep")
	assert.Nil(t, e.NightVisits.Old, "the site does not say when somebody is awake")
	e = compared(nil, green)
	assert.False(t, e.Complete)
	assert.Equal(t, OldSide, e.NotForecast)
	assert.True(t, math.IsNaN(float64(e.Malt.Old)))
}

func TestAFindingWithOtherFiguresStays(t *testing.T) {
	list := Findings(said("the bed gets 31.2 °C warm", "no cooler", "gone"), said("no cooler", "the bed gets 33 °C warm", "new"))
	assert.Equal(t, []string{"went gone", "stays the bed gets 33 °C warm", "came new"}, kinds(list))
	assert.Equal(t, "the bed gets 31.2 °C warm", list[1].Before)
	twice := Findings(said("step 1 is long"), said("step 2 is long", "step 3 is long"))
	assert.Equal(t, []string{"stays step 2 is long", "came step 3 is long"}, kinds(twice))
}

func TestTheAirOfBoxesIsCompared(t *testing.T) {
	box := &forecast.Forecast{Process: &model.Process{}, Totals: forecast.Totals{FanTime: 3600, AirCold: 7.2e6, Sprinkled: 80},
		Pieces: []forecast.Piece{{}, {Blown: &forecast.Blown{Fan: 3600, Uneven: forecast.Uneven{Bottom: 13, Top: 16.5}}}, {Blown: &forecast.Blown{}}}}
	floor := &forecast.Forecast{Process: &model.Process{}}
	e := compared(floor, box)
	assert.Equal(t, []float64{3600, 7.2e6, 0, 80, 3.5}, []float64{float64(e.Fan.New), float64(e.AirCold.New), float64(e.AirHeat.New), float64(e.Sprinkled.New), float64(e.Apart.New)})
	assert.True(t, math.IsNaN(float64(e.Fan.Old)) && math.IsNaN(float64(e.AirCold.Old)) && math.IsNaN(float64(e.Apart.Old)), "no fan")
	assert.Zero(t, float64(e.Sprinkled.Old), "nothing is sprinkled on it")
}
