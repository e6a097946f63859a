package command

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/source/golden"
	"maltwright/sim/ensemble"
	"maltwright/sim/infer/learn"
)

// learnFrom runs learn in the folder of the project.
func learnFrom(t *testing.T, args ...string) string {
	t.Helper()
	return once(t, func() string {
		var out strings.Builder
		w := World{In: strings.NewReader(""), Out: &out, Err: os.Stderr, Folder: "../..", Env: os.Getenv}
		require.Equal(t, ExitClean, Main(w, append([]string{"learn", "examples/batches"}, args...)))
		return out.String()
	}, "learn", args)
}

const learntExample = exampleBatches + "/learnt.malt"

// learntNotice stands in front of what the program wrote in the example.
const learntNotice = "# Invented, like the records.\n"

func TestTheLearntExampleIsWhatTheProgramWrites(t *testing.T) {
	longSums(t)
	want := learntNotice + learnFrom(t, "--format", "malt")
	if golden.Updating() {
		require.NoError(t, os.WriteFile(learntExample, []byte(want), 0o644))
	}
	text, failed := os.ReadFile(learntExample)
	require.NoError(t, failed)
	assert.Equal(t, string(text), want)
}

// The guide shows what the program says.
func TestWhatTheHouseLearnsInTheGuideIsReal(t *testing.T) {
	longSums(t)
	const page = "../../docs/batch.md"
	text, err := os.ReadFile(page)
	require.NoError(t, err)
	before, rest, ok := strings.Cut(string(text), "    maltwright learn examples/batches\n\n```text\n")
	require.True(t, ok)
	shown, after, ok := strings.Cut(rest, "```")
	require.True(t, ok)
	out := learnFrom(t)
	if golden.Updating() && shown != out {
		made := before + "    maltwright learn examples/batches\n\n```text\n" + out + "```" + after
		require.NoError(t, os.WriteFile(page, []byte(made), 0o644))
		return
	}
	assert.Equal(t, shown, out)
}

func TestFiguresHaveTheDigitsThatTheirErrorGivesAMeaning(t *testing.T) {
	l := &lesson{}
	for _, c := range []struct {
		value, err float64
		want       string
	}{
		{1.0624, 0.0431, "1.062 0.043"}, {1.0624, 0.131, "1.06 0.13"}, {0.9, 0.00996, "0.900 0.010"}, {1.05, 0.0994, "1.050 0.099"},
		{1.05, 0.0996, "1.05 0.10"}, {-0.684, 0.996, "-0.7 1.0"}, {12, 14.2, "12 14"}, {1, 0, "1.00 0.00"},
	} {
		value, off := l.figures(learn.Factor{Value: c.value, Error: c.err})
		assert.Equal(t, c.want, value+" "+off)
	}
}

func TestTheVerdictSaysWhatWasNotBetter(t *testing.T) {
	assert.Contains(t, verdict([]string{"weight"}, nil), "in all of these")
	assert.Contains(t, verdict(nil, []string{"weight"}), "came no nearer")
	assert.Equal(t, "What the others taught came nearer than the model as it stands in weight and acrospire, but not in temperature.", verdict([]string{"weight", "acrospire"}, []string{"temperature"}))
	assert.Contains(t, verdict(nil, nil), "Nothing")
}

// A house in pounds and °F is told in them, and the block stays in °C.
func TestAHouseIsToldInItsUnits(t *testing.T) {
	p := sheet{World: &World{}, pounds: true, fahrenheit: true}
	l := &lesson{Result: &learn.Result{
		Batches:          []*model.Batch{{Name: "a", Process: &model.Process{}}, {Name: "b", Process: &model.Process{}}},
		Factors:          []learn.Factor{{Which: learn.Thermometer, Value: 0.5, Error: 0.1, Spread: 0.8, VarianceExplained: 0.9, Batches: 2}},
		PredictionErrors: []learn.PredictionError{{Kind: learn.Weights, Readings: 3, Learnt: kilogramsPerPound, Model: 2 * kilogramsPerPound}, {Kind: learn.Temperatures, Readings: 3, Learnt: 1, Model: 0.5}},
		Correlated:       []learn.Pair{{A: "how fast the lot grows", B: "the warmth of the room", Correlation: -0.9}},
	}}
	p.learntFactors(l)
	p.untold(l)
	p.heldOut(l)
	p.lessonBlock(l)
	text := strings.Join(strings.Fields(p.b.String()), " ")
	assert.Contains(t, text, "thermometer, °F +0.90 0.18 0 ± 1.44 90 % 2")
	assert.Contains(t, text, "weight, lb 3 1.0 2.0")
	assert.Contains(t, text, "temperature, °F 3 1.80 0.90")
	assert.Contains(t, text, "in weight, but not in temperature")
	assert.Contains(t, text, "hardly tell them apart (errors correlated -0.90)")
	assert.Contains(t, text, "thermometer 0.50 °C error 0.10 °C")
}

func TestAReportOfLearningFitsTheScreen(t *testing.T) {
	longSums(t)
	for _, line := range strings.Split(learnFrom(t), "\n") {
		assert.LessOrEqual(t, len([]rune(line)), 80, line)
	}
	long := &model.Grain{Name: strings.Repeat("a very long name of a lot, ", 5)}
	p := sheet{World: &World{}}
	p.learntFactors(&lesson{Result: &learn.Result{Factors: []learn.Factor{{Which: ensemble.Uptake, Grain: long, Value: 1, Error: 0.1}}}})
	assert.Contains(t, p.b.String(), long.Name+"\"\n")
}
