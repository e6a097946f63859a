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
	assert.Empty(t, findings(said("a", "b"), said("b", "a")), "the order makes no difference")
	assert.Equal(t, []string{"went b", "came c", "came d"}, kinds(findings(said("a", "b"), said("c", "a", "d"))))
	assert.Equal(t, []string{"went a"}, kinds(findings(said("a", "a", "a"), said("a", "a"))), "one of several that say the same")
	assert.Equal(t, []string{"came a"}, kinds(findings(said("a"), said("a", "a"))))
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
