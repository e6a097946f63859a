package main

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/cmd/answer/ledger"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/follow"
	"maltwright/sim/infer/learn"
	"maltwright/sim/work"
)

// The bounds that the guide states are those of the program.
func TestTheStatedBoundsAreTrue(t *testing.T) {
	text, err := os.ReadFile("../../docs/limits.md")
	require.NoError(t, err)
	for _, row := range []string{
		fmt.Sprintf("| one file | %d MiB, %s statements, blocks %d deep |", source.MaxBytes>>20, thousands(syntax.MaxStatements), syntax.MaxNesting),
		fmt.Sprintf("| files that one process uses | %d, with %d MiB together |", read.MaxFiles, read.MaxTotal>>20),
		fmt.Sprintf("counted as often as they are done | %d |", model.MostSteps),
		fmt.Sprintf("stages of a process | %d |", model.MostStages),
		fmt.Sprintf("sprinkling to the next | at least %.0f min |", model.LeastInterval/60),
		fmt.Sprintf("| one forecast | %d million steps of the model; a usual one takes %s |", work.Most/1_000_000, thousands(usualForecast)),
		fmt.Sprintf("| %d million steps, some %d usual processes |", work.File/1_000_000, work.File/usualForecast),
		fmt.Sprintf("in `check` and `note` | %d million steps, some %d usual records |", work.Records/1_000_000, work.Records/usualRecord/10*10),
		fmt.Sprintf("in `seasons` | %d million steps, some %d usual records; %s for one", work.Seasons/1_000_000, work.Seasons/usualSeason/10*10, thousands(work.Shared)),
		fmt.Sprintf("one forecast of a record that `learn` takes | %s steps |", thousands(work.Shared)),
		fmt.Sprintf("| forecasts of a spread | %s, with %s steps each in the mean |", thousands(ensemble.MostMembers), thousands(work.Shared)),
		fmt.Sprintf("weighs | %s of each draw; %s steps for each", thousands(follow.MostMembers), thousands(work.Shared*3/2)),
		fmt.Sprintf("| batches that `learn` takes | %d |", learn.MostBatches),
	} {
		assert.Contains(t, string(text), row)
	}
}

// What a usual forecast takes, a usual record to be judged, and one to be set beside others, in
// steps of the model.
const usualForecast, usualRecord, usualSeason = 25_000, 410_000, 1_500_000

// That they are usual is so of the loft's pale malt and of its records.
func TestWhatAUsualForecastAndRecordTake(t *testing.T) {
	folder := filepath.Join("..", "..", "examples")
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	t.Cleanup(func() { root.Close() })
	text := func(name string) []byte {
		text, err := os.ReadFile(filepath.Join(folder, name))
		require.NoError(t, err)
		return text
	}
	h, _ := read.Load("pale.malt", text("pale.malt"), ".", root)
	meter := work.NewMeter(t.Context(), nil)
	_, err = forecast.Run(h.Processes[0], forecast.Options{Meter: meter})
	require.NoError(t, err)
	assert.InEpsilon(t, usualForecast, meter.Spent(), 0.2)

	const record = "batches/26-03.malt"
	judged := work.NewPool(work.Records)
	check.File(record, text(record), "batches", root, check.Options{Records: judged})
	assert.InEpsilon(t, usualRecord, work.Records-judged.Left(), 0.2)

	files, err := World{Folder: folder}.gather([]string{record}, "")
	require.NoError(t, err)
	beside := work.NewPool(work.Seasons)
	_, err = Seasons{}.enter(ledger.New(t.Context(), func() *work.Pool { return beside }), files)
	require.NoError(t, err)
	assert.InEpsilon(t, usualSeason, work.Seasons-beside.Left(), 0.2)
}

// thousands writes a number of at most six digits as the guide does.
func thousands(n int) string { return fmt.Sprintf("%d,%03d", n/1000, n%1000) }
