package main

import (
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/sim/ensemble"
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
		fmt.Sprintf("| one forecast | %d million steps of the model;", work.Most/1_000_000),
		fmt.Sprintf("| %d million steps, some %d usual processes |", work.File/1_000_000, work.File/50_000),
		fmt.Sprintf("in `check` and `note` | %d million steps, some %d usual records |", work.Records/1_000_000, work.Records/700_000/10*10),
		fmt.Sprintf("in `seasons` | %d million steps, some %d usual records; %s for one", work.Seasons/1_000_000, work.Seasons/3_000_000, thousands(work.Shared)),
		fmt.Sprintf("one forecast of a record that `learn` takes | %s steps |", thousands(work.Shared)),
		fmt.Sprintf("| forecasts of a spread | %s, with %s steps each in the mean |", thousands(ensemble.MostMembers), thousands(work.Shared)),
		fmt.Sprintf("weighs | %s of each draw; %s steps for each", thousands(follow.MostMembers), thousands(work.Shared*3/2)),
		fmt.Sprintf("| batches that `learn` takes | %d |", learn.MostBatches),
	} {
		assert.Contains(t, string(text), row)
	}
}

// thousands writes a number of at most six digits as the guide does.
func thousands(n int) string { return fmt.Sprintf("%d,%03d", n/1000, n%1000) }
