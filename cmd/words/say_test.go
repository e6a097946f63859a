package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/sample"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
	"maltwright/lang/quantity"
	"maltwright/sim/visits"
)

func TestEveryTaskOfTheExamplesIsSaid(t *testing.T) {
	said := map[visits.Kind]string{}
	for _, name := range []string{"pale.malt", "crystal.malt", "deep-bed.malt", "floor-kiln.malt", "oven.malt", "oats.malt", "dryer.malt", "box.malt"} {
		f := sample.Forecast(t, name)
		for _, v := range visits.List(f) {
			said[v.Kind] = words.Of(f.Process).Say(timetable.TaskOf(v).Words)
		}
	}
	for kind, text := range said {
		assert.NotEmpty(t, text, kind)
	}
	assert.Greater(t, len(said), 12)
}

func TestTasksAreSaid(t *testing.T) {
	water := &answer.Temperature{Place: "water", From: 13, To: 13}
	kiln := &answer.Temperature{Place: "air-on", From: 55, To: 65}
	metric, british := words.House{}, words.House{System: quantity.System{Fahrenheit: true, British: true}}
	for _, c := range []struct {
		house words.House
		do    timetable.Sentence
		want  string
	}{
		{metric, timetable.Sentence{Kind: visits.Fill, Name: "soak 1", Where: "blue tub", Temperature: water, Lasts: 7 * 3600}, `fill "blue tub" for soak 1: 7 h in water at 13 °C`},
		{british, timetable.Sentence{Kind: visits.Fill, Name: "soak 1", Temperature: water, Lasts: 7 * 3600}, `fill for soak 1: 7 h in water at 55 °F`},
		{metric, timetable.Sentence{Kind: visits.Drain, Name: "soak 1", Each: []outlook.Gross[answer.Kilograms]{{In: "t1", Weight: 3.451}, {In: "t2", Weight: 6.9}}}, `drain soak 1, weigh (3.45 kg in "t1", 6.90 kg in "t2")`},
		{metric, timetable.Sentence{Kind: visits.Heat, Name: "dry", Temperature: kiln, Rise: 4 * 3600, Until: "moisture\n  at most 10 %"}, "dry from air-on 55 to 65 °C, rising over 4 h until moisture at most 10 %"},
		{metric, timetable.Sentence{Kind: visits.Cool, Temperature: kiln}, "heat off, cool to air-on 65 °C"},
		{metric, timetable.Sentence{Kind: visits.Load, Where: "high", With: "low", Name: "dry", Until: "moisture at most 20 %"}, `load "high"; dry in the exhaust of "low" until moisture at most 20 %`},
		{metric, timetable.Sentence{Kind: visits.Unload, Where: "high", With: "low"}, `when "low" below is free: take the malt off "high" and turn it down, weigh`},
		{metric, timetable.Sentence{Kind: visits.Gate, Until: "moisture at most 10 %", Missed: true}, "weigh for the gate: moisture at most 10 %; its latest time, and the forecast does not expect it met by then"},
		{metric, timetable.Sentence{Kind: visits.Unload, Where: "kiln\x1b[31m"}, `take the malt off "kiln<U+001B>[31m", weigh`},
	} {
		assert.Equal(t, c.want, c.house.Say(c.do))
	}
}

func TestAmountIsToldInTheUnitOfWhatAsksForIt(t *testing.T) {
	q, err := quantity.Parse("62 °F")
	require.NoError(t, err)
	assert.Equal(t, "57 °F", words.House{}.Say(outlook.Amount{SI: 287, Like: q}))
}

type mute struct{ Value int }

func (mute) Told() {}

func TestWhatHasNoWordsIsToldByItsValues(t *testing.T) {
	assert.Equal(t, "{Value:3}", words.House{}.Say(mute{3}))
}
