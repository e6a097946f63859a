package visits

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

func listed(t *testing.T, text string) []Task {
	t.Helper()
	h, _ := read.Load("x.malt", []byte(text), ".", nowhere{})
	require.Len(t, h.Processes, 1)
	f, err := forecast.Run(h.Processes[0], forecast.Options{})
	require.NoError(t, err)
	return List(f)
}

func oneProcess(body string) string {
	return "process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n" + body + "}\n"
}

func TestWhatGoesIntoEachVesselIsTold(t *testing.T) {
	steep := strings.Replace(steepText, `in "tub" { soak 7 h in water`, `in "tub" and "small tub" { soak 7 h in 16 l water`, 1)
	require.NotEqual(t, steepText, steep)
	tasks := listed(t, house+"vessel \"small tub\" { holds 10 l }\n"+oneProcess(steep+growText+kilnText))
	fill := tasks[slices.IndexFunc(tasks, func(x Task) bool { return x.Kind == Fill })]
	require.Len(t, fill.Shares, 2)
	assert.Empty(t, fill.Where)
	assert.Equal(t, []string{"tub", "small tub"}, []string{fill.Shares[0].In, fill.Shares[1].In})
	assert.InDelta(t, 4, fill.Shares[0].Grain, 1e-9, "40 of 50 l, of 5 kg")
	assert.InDelta(t, 0.0128, fill.Shares[0].Water, 1e-12, "and of 16 l")
	assert.InDelta(t, 0.0032, fill.Shares[1].Water, 1e-12)
	assert.Equal(t, "16 l", fill.Water.String())
}

func TestWhatEachVesselWeighsIsTold(t *testing.T) {
	steep := strings.Replace(steepText, `in "tub" {`, `in "tub" and "small tub" {`, 1)
	with := strings.Replace(house, "vessel \"tub\" { holds 40 l }", "vessel \"tub\" { holds 40 l; weighs 2 kg }", 1)
	drained := func(small string) Task {
		tasks := listed(t, with+small+oneProcess(steep+growText+kilnText))
		return tasks[slices.IndexFunc(tasks, func(x Task) bool { return x.Kind == Drain })]
	}
	x := drained("vessel \"small tub\" { holds 10 l; weighs 900 g }\n")
	require.Len(t, x.Each, 2)
	assert.Equal(t, []string{"tub", "small tub"}, []string{x.Each[0].In, x.Each[1].In})
	assert.InDelta(t, 2+0.8*x.Weight, x.Each[0].Gross, 1e-9)
	assert.InDelta(t, 0.9+0.2*x.Weight, x.Each[1].Gross, 1e-9)
	assert.Empty(t, drained("vessel \"small tub\" { holds 10 l }\n").Each, "what one of them weighs is not said")
}

func TestGrainThatGrowsWhereItWasSteepedIsNotSpread(t *testing.T) {
	with := strings.Replace(house, "vessel \"tub\" { holds 40 l }", "vessel \"tub\" { holds 40 l; area 0.4 m2 }\nvessel \"other\" { holds 40 l; area 0.4 m2 }", 1)
	for in, spread := range map[string]bool{"tub": false, "other": true} {
		tasks := listed(t, with+oneProcess(steepText+strings.Replace(growText, `on "tray"`, `in "`+in+`"`, 1)+kilnText))
		assert.Equal(t, spread, slices.ContainsFunc(tasks, func(x Task) bool { return x.Kind == Spread }), in)
		first := tasks[slices.IndexFunc(tasks, func(x Task) bool { return x.Stage == model.GerminateStage })]
		assert.True(t, first.Temperature.Known, "what it is held at is told either way")
	}
}
