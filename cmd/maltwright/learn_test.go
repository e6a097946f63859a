package main

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
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

func TestAReportOfLearningFitsTheScreen(t *testing.T) {
	longSums(t)
	for _, line := range strings.Split(learnFrom(t), "\n") {
		assert.LessOrEqual(t, len([]rune(line)), 80, line)
	}
}
