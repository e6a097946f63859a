package main

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/lessons"
	"maltwright/cmd/words"
	"maltwright/lang/source/golden"
	"maltwright/sim/seasons"
)

// taught is what the batches of the examples teach.
type taught struct {
	answer lessons.Result
	house  words.House
}

// learnFrom writes what the batches of the examples teach.
func learnFrom(t *testing.T, format string) string {
	t.Helper()
	var out strings.Builder
	w := World{In: strings.NewReader(""), Out: &out, Err: os.Stderr, Folder: "../..", Env: os.Getenv}
	l := once(t, func() taught {
		files, err := w.gather([]string{"examples/batches"}, "")
		require.NoError(t, err)
		var all []record
		_, err = recordsOf(files, func(r record) { all = append(all, r.located()) })
		require.NoError(t, err)
		slices.SortStableFunc(all, func(a, b record) int { return seasons.ByBeginning(a.batch, b.batch) })
		answer, house, err := Learn{}.learn(&w, all)
		require.NoError(t, err)
		return taught{answer, house}
	}, "learn")
	require.NoError(t, learnWriters[format](&w, l.answer, l.house))
	return out.String()
}

const learntExample = exampleBatches + "/learnt.malt"

// learntNotice stands in front of what the program wrote in the example.
const learntNotice = "# Invented, like the records.\n"

func TestTheLearntExampleIsWhatTheProgramWrites(t *testing.T) {
	longSums(t)
	want := learntNotice + learnFrom(t, "malt")
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
	out := learnFrom(t, "text")
	if golden.Updating() && shown != out {
		made := before + "    maltwright learn examples/batches\n\n```text\n" + out + "```" + after
		require.NoError(t, os.WriteFile(page, []byte(made), 0o644))
		return
	}
	assert.Equal(t, shown, out)
}

func TestAReportOfLearningFitsTheScreen(t *testing.T) {
	longSums(t)
	for _, line := range strings.Split(learnFrom(t, "text"), "\n") {
		assert.LessOrEqual(t, len([]rune(line)), 80, line)
	}
}

// A batch that was held out is told with how long it grew and how long it dried.
func TestHeldOutBatchesAreTimed(t *testing.T) {
	longSums(t)
	out := learnFrom(t, "json")
	assert.Equal(t, 3, strings.Count(out, `"what": "germination"`))
	assert.Equal(t, 3, strings.Count(out, `"what": "drying"`))
}
