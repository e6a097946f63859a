package words_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/words"
	"maltwright/lang/quantity"
	"maltwright/sim/infer/follow"
)

func weighed(kg, low, high answer.Kilograms) progress.Reading {
	return progress.Reading{Weight: &progress.Compared[answer.Kilograms]{Observed: kg, Error: 0.1,
		Expected: &answer.Spread[answer.Kilograms]{P10: low, P50: (low + high) / 2, P90: high, Share: 1}}}
}

func TestEachDoubtSaysWhatWouldExplainIt(t *testing.T) {
	r := weighed(4.1, 7.2, 7.6)
	nine := time.Date(2026, 3, 6, 9, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		d    progress.Doubt
		want string
	}{
		{progress.Doubt{Kind: follow.BelowDry, Reading: r}, "it is less than the dry matter of the batch; 7.10 kg to 7.70 kg is expected. Look at the number, its unit and the tare"},
		{progress.Doubt{Kind: follow.NoTare, Reading: r, Holder: "tub", Empty: "990 g"}, `it would fit without the weight of "tub", 990 g: then leave out in "tub"`},
		{progress.Doubt{Kind: follow.WithHolder, Reading: r, Holder: "tub", Empty: "990 g"}, `it would fit with the weight of "tub", 990 g, included: then write in "tub" after the weight`},
		{progress.Doubt{Kind: follow.NoTare, Reading: r, Tare: "0.9 kg"}, "it would fit if the weight did not include the tare of 0.9 kg; the record takes the tare off every such weight. Weigh grain and tare together, or write the weight of both"},
		{progress.Doubt{Kind: follow.Unit, Reading: r, Unit: "lb"}, "it would fit in lb; 7.10 kg to 7.70 kg is expected. Correct the unit"},
		{progress.Doubt{Kind: follow.Nought, Reading: r, Unit: "7.41 kg"}, "it would fit as 7.41 kg, with the decimal point moved; 7.10 kg to 7.70 kg is expected"},
		{progress.Doubt{Kind: follow.Swapped, Reading: r, Unit: "7.41 kg"}, "it would fit as 7.41 kg, with two digits swapped; 7.10 kg to 7.70 kg is expected"},
		{progress.Doubt{Kind: follow.OtherTime, Reading: progress.Reading{At: nine}, When: nine.Add(12 * time.Hour)}, "it does not fit at its time, but would fit at 2026-03-06 21:00. Look at the time: morning and evening are easily mixed up"},
		{progress.Doubt{Kind: follow.OtherTime, Reading: progress.Reading{At: nine}, When: nine.Add(-24 * time.Hour)}, "it does not fit at its time, but would fit at 2026-03-05 09:00. Look at the date"},
		{progress.Doubt{Kind: follow.GainedWater, Reading: r, Against: "weighed 4 kg at 07:00"}, "the malt only dries here, and cannot weigh more than in the reading before, weighed 4 kg at 07:00; 7.10 kg to 7.70 kg is expected"},
		{progress.Doubt{Kind: follow.ChargesDry, Reading: r, Holds: 0.161}, "it is the weight asked for only if no dry matter was lost; with the loss the malt holds 16.1 %. Calculate the weight to dry to with reckon target --lost"},
		{progress.Doubt{Kind: follow.NotYet, Reading: r, Holds: 0.43, Wanted: 0.35}, "at that weight the malt held 43.0 %, and the step that ended waits for 35.0 %. Look at the weight, and at the step behind \"after\""},
		{progress.Doubt{Kind: follow.GoesBack, Reading: r, Against: "counted chit 86 of 100"}, "growth never goes back, and the record says before it: counted chit 86 of 100. Count more kernels"},
		{progress.Doubt{Kind: follow.NoStep, Reading: r}, "no step of the kiln has such air; 7.10 kg to 7.70 kg is expected. Look at the number, and write changed if the kiln was set otherwise"},
		{progress.Doubt{Kind: follow.OutOfPlace, Reading: r}, "the other lines say that this cannot be read at that time. Look at its time, and at the step behind \"after\""},
		{progress.Doubt{Kind: follow.OutOfPlace}, "the other lines say that this cannot be read at that time. Look at its time, and at the kind of reading"},
		{progress.Doubt{Kind: follow.Disagrees, Reading: r}, "the other readings and the process make 7.10 kg to 7.70 kg likely. Look at the number, and at whether the step was done as the process says"},
	} {
		assert.Equal(t, c.want, words.House{}.Say(c.d))
	}
}

func TestWhatWasToBeExpectedIsToldAsTheReadingIs(t *testing.T) {
	british := words.House{System: quantity.System{Fahrenheit: true, British: true}}
	disagrees := func(r progress.Reading) progress.Doubt {
		return progress.Doubt{Kind: follow.Disagrees, Reading: r}
	}
	assert.Contains(t, british.Say(disagrees(weighed(4, 7.2, 7.6))), "make 15.7 lb to 17.0 lb likely")

	warm := progress.Reading{Temperature: &progress.Compared[answer.Celsius]{Observed: 60, Error: 1, Expected: &answer.Spread[answer.Celsius]{P10: 18, P50: 19, P90: 20, Share: 1}}}
	assert.Contains(t, words.House{}.Say(disagrees(warm)), "make 17.0 °C to 21.0 °C likely")
	assert.Contains(t, british.Say(disagrees(warm)), "make 63 °F to 70 °F likely")

	chit := progress.Reading{Chit: &progress.Compared[answer.Share]{Observed: 0.2, Error: 0.05, Expected: &answer.Spread[answer.Share]{P10: 0.93, P50: 0.95, P90: 0.97, Share: 1}}}
	assert.Contains(t, words.House{}.Say(disagrees(chit)), "make 88 of 100 to 100 of 100 likely")

	length := progress.Reading{Acrospire: &progress.Compared[answer.Number]{Observed: 0.2, Error: 0.05, Expected: &answer.Spread[answer.Number]{P10: 0.65, P50: 0.7, P90: 0.75, Share: 1}}}
	assert.Contains(t, words.House{}.Say(disagrees(length)), "make a mean length of 0.60 to a mean length of 0.80 likely")

	rub := progress.Reading{Modification: &progress.Compared[answer.Number]{Observed: 0.2, Error: 0.04, Expected: &answer.Spread[answer.Number]{P10: 0.9, P50: 0.92, P90: 0.94, Share: 1}}}
	assert.Contains(t, words.House{}.Say(disagrees(rub)), "make chalky likely")

	nothing := progress.Reading{Chit: &progress.Compared[answer.Share]{}}
	assert.Contains(t, words.House{}.Say(disagrees(nothing)), "make "+words.None+" likely")
}

func TestHowLongItIsUntilSomething(t *testing.T) {
	for want, s := range map[string]answer.Seconds{"never": answer.Seconds(math.Inf(1)), "now": -7200, "1 min": 60, "7 h 5 min": 7*3600 + 300, "2 d 12 h": 2.5 * 86400} {
		assert.Equal(t, want, words.Until(s))
	}
	for want, s := range map[string]answer.Seconds{"less than a minute": 59, "1 h 30 min": 5400, "2 d": 172799, "2 d 6 h": 2.25 * 86400} {
		assert.Equal(t, want, words.Ago(s))
	}
}

// What comes about in few cases has no time that it comes by, and what does not come about says what can be done.
func TestWhatMayNotComeAboutIsToldInWords(t *testing.T) {
	h := answer.Seconds(3600)
	never := answer.Seconds(math.Inf(1))
	for want, s := range map[string]answer.Spread[answer.Seconds]{
		"2 to 9 h":               {P10: 2 * h, P50: 4 * h, P90: 9 * h},
		"16 h or more, or never": {P10: 16 * h, P50: never, P90: never},
		"":                       {P10: never, P50: never, P90: never},
	} {
		assert.Equal(t, want, words.UntilWithin(s))
	}
	w := progress.Wait{StageName: outlook.StageName{Stage: "steep"}, Text: "moisture at least 43 %", Open: true, Never: true}
	assert.Equal(t, "As it goes on, it does not come to moisture at least 43 % in most cases. Soak once more, or go on with the moisture it has and write that down.", words.NotComing(w))
	w.Stage = "wither"
	assert.Contains(t, words.NotComing(w), "Weigh and look once more")
	w.Never = false
	assert.Empty(t, words.NotComing(w))
}
