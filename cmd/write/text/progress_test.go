package text_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/words"
	"maltwright/cmd/write/text"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/follow"
)

var noon = time.Date(2026, 3, 10, 12, 0, 0, 0, time.UTC)

func points[T answer.Figure](p10, p50, p90 T) answer.Spread[T] {
	return answer.Spread[T]{P10: p10, P50: p50, P90: p90, Share: 1}
}

// underWay is a batch that waits on the floor, too long already.
func underWay() progress.Result {
	moisture, malt, rub := points[answer.Share](0.42, 0.43, 0.44), points[answer.Kilograms](4.8, 5, 5.2), points[answer.Number](0.9, 0.92, 0.94)
	return progress.Result{
		Batch: "x\x1b[1m", Head: outlook.Head{Process: "pale"}, Began: noon.Add(-100 * time.Hour), At: noon, AsOf: progress.LastReading, Elapsed: 100 * 3600,
		Stage: "germinate", Step: "hold", Growing: true, Complete: true, Ignored: 2,
		Now: progress.State{Moisture: &moisture, Modification: &rub},
		Waits: []progress.Wait{{StageName: outlook.StageName{Stage: "germinate"}, Text: "acrospire at least 3/4 and rub is chalky", Open: true,
			Left: answer.Spread[answer.Seconds]{P10: -3600, P50: 7500, P90: answer.Seconds(math.Inf(1)), Share: 0.9}}},
		Late: []progress.Late{{Kind: "step", Since: noon.Add(-2 * time.Hour), Late: 7200, Text: "acrospire at least 3/4"}, {Kind: "turn", Since: noon.Add(-time.Hour), Late: 3600},
			{Kind: "guard", Since: noon.Add(-72 * time.Hour), Late: 72 * 3600, Text: "4 to 7 days"}},
		Steps: []outlook.StepSpread{
			{Stage: "kiln", Label: "dry", End: points[answer.Seconds](110*3600, 112*3600, 114*3600), MoistureEnd: moisture},
			{Stage: "kiln", Label: "wait", End: points[answer.Seconds](111*3600, 112*3600, 114*3600), MoistureEnd: moisture},
			{Stage: "kiln", Label: "dry", End: answer.Spread[answer.Seconds]{P10: 115 * 3600, P50: 116 * 3600, P90: 117 * 3600, Share: 0.5}, MoistureEnd: moisture}},
		Outcome: outlook.TotalsSpread{SteepOutMoisture: moisture, Malt: malt},
		Readings: []progress.Reading{{At: noon, Text: "weighed 4 kg at 12:00", Doubt: "nought", Words: progress.Doubt{Kind: follow.Nought, Unit: "4.9 kg",
			Reading: progress.Reading{Weight: &progress.Compared[answer.Kilograms]{Observed: 4, Error: 0.1, Expected: &malt}}}}, {Text: "turned"}},
		Factors: []progress.Factor{{Factor: "growth", Posterior: &rub, Edge: -1}}, RelativeTo: progress.House,
		Posterior: progress.Posterior{Members: 400, EffectiveSampleSize: 12, Trusted: true, Rounds: 1}, Cautions: []outlook.Caution{outlook.Caution(forecast.Fire)},
	}
}

func shownProgress(t *testing.T, r progress.Result, h words.House) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, text.Progress(&b, r, h, text.Options{}))
	for _, line := range strings.Split(b.String(), "\n") {
		assert.LessOrEqual(t, len([]rune(line)), 80, line)
	}
	return b.String()
}

func TestASampleThatIsNotToBeTrustedIsTold(t *testing.T) {
	r := underWay()
	r.Posterior.Trusted, r.Posterior.ParetoTail = false, new(answer.Number(0.83))
	out := shownProgress(t, r, words.House{})
	said := strings.Join(strings.Fields(out), " ")
	assert.Contains(t, said, "do not trust these figures, nor the dates, which are told to the day")
	assert.Contains(t, said, "in doubt first. Ask for more with --members 1000.")
	assert.NotContains(t, out, "tail", "that is told to programs")
	assert.NotContains(t, out, "Tue 14:05", "dates are told to the day")
	assert.Less(t, strings.Index(out, "how much longer"), strings.Index(out, "do not trust"), "it stands among the last lines")
	for had, ask := range map[int]string{999: "1000", 1000: "2000", 1001: "2000", 9_500: "10000"} {
		r.Posterior.Members = had
		assert.Contains(t, strings.Join(strings.Fields(shownProgress(t, r, words.House{})), " "), "--members "+ask+".", "more than it had, %d", had)
	}
	r.Posterior.ParetoTail = nil
	for i := range r.Readings {
		r.Readings[i].Doubt, r.Readings[i].Words = "", nil
	}
	out = strings.Join(strings.Fields(shownProgress(t, r, words.House{})), " ")
	assert.Contains(t, out, "readings none of the 2 is in doubt by itself, but hardly any of the forecasts agrees with all of the readings at once")
	assert.NotContains(t, out, "readings in doubt", "no reading is")
	assert.NotContains(t, out, "agree with one another", "the screen says that few do")
	r.Posterior.Members = 10_000
	assert.NotContains(t, shownProgress(t, r, words.House{}), "--members", "there are no more")
}

func TestABatchUnderWayIsToldInFull(t *testing.T) {
	out := shownProgress(t, underWay(), words.House{})
	for _, want := range []string{
		"batch x<U+001B>[1m of pale\nas of Tuesday 10 March 2026, 12:00, 4 d 4 h after the first soak\n",
		"that is the last reading, because it is over three days old;", "2 readings are later, and do not count",
		"now: germinate                           middle    1 in 10    9 in 10\n  moisture                               43.0 %     42.0 %     44.0 %\n",
		"  rub                                    chalky     chalky     chalky\n",
		"probably due since Tue 10 Mar 10:00, 2 h ago:", "its latest time passed on Sat 7 Mar 12:00, 3 d ago: 4 to 7",
		"the next turn after the last one in",
		"  germinate: acrospire at least 3/4    2 h 5 min        now      never\n    and rub is chalky, in 90 % of the  Tue 14:05  Tue 11:00\n    cases\n",
		"dry 1          Wed 11 Mar 00:00 Tue 10 Mar 22:00 Wed 11 Mar 02:00 43.0 %\ndry 2          Wed 11 Mar 04:00",
		"43.0 %   50 %\n", "  malt                                  5.00 kg    4.80 kg    5.20 kg\n",
		"readings      1 of 2 in doubt, and few of the forecasts agree with all of the\n              readings at once\n", "doubt         Tue 10 Mar, weighed 4 kg at 12:00: it would fit as 4.9 kg, with\n              the decimal point moved; 4.70 kg to 5.30 kg is expected\n",
		"they are worth 12 that agree\n              well\n", "few of the forecasts agree with all of the readings at once: do\n              not rely on the outer figures, look at the readings in doubt, and\n              ask for more with --members\n",
		"so far        beside what the house has learnt: growth 0.92 (0.90 to 0.94)\n", "growth lies at the lower edge", "take care     fire and burns (--cautions)\n",
	} {
		assert.Contains(t, out, want)
	}
	assert.NotContains(t, out, "wait ends", "it is told as what is waited for")
	assert.NotContains(t, out, "steep-out", "that is over")
	assert.NotContains(t, out, "total time", "no forecast has it")
}

func TestOnANarrowScreenARowOfFiguresStandsOnOneLine(t *testing.T) {
	r := underWay()
	r.Outcome.Total, r.Outcome.FinalMoisture = points[answer.Seconds](190*3600, 200*3600, 220*3600), points[answer.Share](0.041, 0.045, 0.049)
	var b strings.Builder
	require.NoError(t, text.Progress(&b, r, words.House{}, text.Options{Width: 40}))
	out := b.String()
	for _, line := range strings.Split(out, "\n") {
		assert.LessOrEqual(t, len([]rune(line)), 40, line)
	}
	for _, want := range []string{
		"now: germinate middle     8 in 10\n  moisture     43.0 % 42.0–44.0 %\n",
		"\n  total time   8 d 8 h 7 d 22 h–9 d 4 h\n  end moisture   4.5 %        4.1–4.9 %\n",
		"\n  germinate: acrospire at least 3/4\n    and rub is chalky, in 90 % of the\n    cases\n    2 h 5 min       now–never\n    Tue 14:05 Tue 11:00–never\n",
		"\ndry 1    Wed 00:00 Tue 22:00–Wed 02:00\ndry 2    Wed 04:00",
		"\n  in 50 % of the cases\n",
	} {
		assert.Contains(t, out, want)
	}
}

func TestABatchOfGreenMaltHasNoFirstSoak(t *testing.T) {
	r := underWay()
	r.Green = true
	assert.Contains(t, shownProgress(t, r, words.House{}), "12:00, 4 d 4 h after it was begun\n")
}

func TestAForecastThatBreaksOffIsTold(t *testing.T) {
	r := underWay()
	assert.NotContains(t, shownProgress(t, r, words.House{}), "broken off")
	r.Complete = false
	assert.Contains(t, shownProgress(t, r, words.House{}), "broken off    the forecast breaks off before the end of the process")
}

func TestABatchIsToldInTheUnitsOfItsHouse(t *testing.T) {
	r, warm := underWay(), points[answer.Celsius](16, 17, 18)
	r.Now.Bed = &warm
	out := shownProgress(t, r, words.House{System: quantity.System{Fahrenheit: true, British: true}})
	assert.Contains(t, out, "  in the middle of the bed                63 °F      61 °F      64 °F\n")
	assert.Contains(t, out, "  malt                                  11.0 lb    10.6 lb    11.5 lb\n")
}

func TestTheBatchUnderWayIsToldAsTheScaleShowsIt(t *testing.T) {
	r := underWay()
	spread := func(kg float64) answer.Spread[answer.Kilograms] {
		at := answer.Kilograms(kg)
		return answer.Spread[answer.Kilograms]{P10: at, P50: at, P90: at, Share: 1}
	}
	bag, tray := spread(0.131), spread(10.2)
	r.Now.OnScale = outlook.OnScale[answer.Spread[answer.Kilograms]]{Gross: &outlook.Gross[answer.Spread[answer.Kilograms]]{In: "tray", Weight: tray}, Bag: &bag}
	require.NotEmpty(t, r.Steps)
	r.Steps[0].OnScale = r.Now.OnScale
	r.Steps[0].WeightEnd = spread(9.21)
	out := shownProgress(t, r, words.House{})
	assert.Contains(t, out, "    in \"tray\"                           10.2 kg    10.2 kg    10.2 kg\n  the marked bag                          131 g      131 g      131 g\n")
	assert.Contains(t, out, "    then 9.21 kg, 10.2 kg in \"tray\", the bag 131 g\n")
}
