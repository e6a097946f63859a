package text_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/lessons"
	"maltwright/cmd/words"
	"maltwright/cmd/write/text"
	"maltwright/lang/quantity"
	"maltwright/sim/ensemble"
)

// learnt is what a house in pounds and °F was taught.
func learnt() lessons.Result {
	const pound = 0.45359237
	thermometer := &lessons.Estimate[answer.Kelvin]{Value: 0.5, Error: 0.1, PriorSD: 0.8, VarianceExplained: 0.9, Known: true, Batches: 2}
	return lessons.Result{
		Batches:     []lessons.Batch{{Batch: "a", Process: "p"}, {Batch: "b", Process: "p"}},
		Thermometer: thermometer,
		Correlated:  []lessons.Pair{{A: lessons.Side{Open: ensemble.LotGrowth}, B: lessons.Side{Open: ensemble.RoomAir}, Correlation: -0.9}},
		PredictionErrors: &lessons.PredictionErrors{Weight: &lessons.RMSE[answer.Kilograms]{Count: 3, Learnt: pound, Model: 2 * pound},
			Temperature: &lessons.RMSE[answer.Kelvin]{Count: 3, Learnt: 1, Model: 0.5},
			Drying:      &lessons.RMSE[answer.Seconds]{Count: 2, Learnt: 1800, Model: 5400}},
		House: &lessons.House{Name: "h", Thermometer: thermometer},
	}
}

func shownLessons(t *testing.T, r lessons.Result, h words.House) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, text.Lessons(&b, r, h, text.Options{}))
	return b.String()
}

// A house in pounds and °F is told in them, and so is the block.
func TestAHouseIsToldInItsUnits(t *testing.T) {
	out := strings.Join(strings.Fields(shownLessons(t, learnt(), words.House{System: quantity.System{Fahrenheit: true, British: true}})), " ")
	assert.Contains(t, out, "thermometer, °F +0.90 0.18 0 ± 1.4 90 % 2")
	assert.Contains(t, out, "weight, lb 3 1.0 2.0")
	assert.Contains(t, out, "temperature, °F 3 1.80 0.90")
	assert.Contains(t, out, "drying, h 2 0.5 1.5")
	assert.Contains(t, out, "in weight and the hours of drying, but not in temperature")
	assert.Contains(t, out, "hardly separate the two (errors correlated -0.90)")
	assert.Contains(t, out, "thermometer 0.90 °F error 0.18 °F")
}

func TestAHouseInKilogramsIsToldInThem(t *testing.T) {
	out := strings.Join(strings.Fields(shownLessons(t, learnt(), words.House{})), " ")
	assert.Contains(t, out, "thermometer, °C +0.50 0.10 0 ± 0.8 90 % 2")
	assert.Contains(t, out, "weight, kg 3 0.45 0.91")
	assert.Contains(t, out, "temperature, °C 3 1.00 0.50")
}

func TestALongNameOfALotStandsOnItsOwnLine(t *testing.T) {
	name := strings.Repeat("a very long name of a lot, ", 5)
	r := lessons.Result{Factors: []lessons.Factor{{Factor: "uptake", Of: &name, Estimate: lessons.Estimate[answer.Number]{Value: 1, Error: 0.1}}}}
	shown := shownLessons(t, r, words.House{})
	assert.Contains(t, strings.Join(strings.Fields(shown), " "), strings.TrimSpace(name)+" \": 1.00 ± 0.10; usual")
	for line := range strings.Lines(shown) {
		assert.LessOrEqual(t, len([]rune(strings.TrimRight(line, "\n"))), 80, line)
	}
}

func TestWhereTheBlockBelongsIsTold(t *testing.T) {
	r, in := learnt(), ""
	assert.Contains(t, shownLessons(t, r, words.House{}), "write it with --format malt into a file, such as learnt.malt,")
	r.Seat.Beside = "house/loft.malt"
	assert.Contains(t, shownLessons(t, r, words.House{}), "into a file beside house/loft.malt,")
	r.Seat.Inside = &in
	assert.Contains(t, shownLessons(t, r, words.House{}), "write the block into the file of the process, which defines the\n")
}

// What each batch says by itself stands beside the house, in the units of the house; what it
// does not tell is a dash.
func TestEachBatchStandsBesideTheHouse(t *testing.T) {
	r := learnt()
	growth := func(value answer.Number, told bool) lessons.SingleFactor {
		return lessons.SingleFactor{Factor: "growth", Alone: lessons.Alone[answer.Number]{Value: value, Error: 0.04, Told: told}}
	}
	r.Factors = []lessons.Factor{{Factor: "growth", Estimate: lessons.Estimate[answer.Number]{Value: 1.07, Error: 0.03, Scatter: new(answer.Number(0.08)), Batches: 6, Before: 3}}}
	r.From = new("h")
	r.Singles = []lessons.Single{
		{Batch: "a", Factors: []lessons.SingleFactor{growth(0.86, true)}, Thermometer: &lessons.Alone[answer.Kelvin]{Value: 1, Error: 0.25, Told: true}},
		{Batch: "b", Factors: []lessons.SingleFactor{growth(1, false)}},
	}
	out := strings.Join(strings.Fields(shownLessons(t, r, words.House{System: quantity.System{Fahrenheit: true}})), " ")
	assert.Contains(t, out, "by itself growth thermometer the house 1.07±0.03 0.90±0.18 a 0.86±0.04 1.80±0.45 b - -")
	assert.Contains(t, out, "differ from batch to batch, as a standard deviation about the figure of the house: growth by 0.080.")
	assert.Contains(t, out, "It goes on from the figures of house h, learnt from older batches")
	assert.Contains(t, out, "growth 1.070 0.030 0 ± 0 0 % 9")
	other := "other lot"
	r.Factors = append(r.Factors, lessons.Factor{Factor: "growth", Of: &other})
	assert.Contains(t, strings.Join(strings.Fields(shownLessons(t, r, words.House{})), " "), "the house several")
}
