package read

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/source/declaration"
	"maltwright/lang/vocabulary"
)

// The typed process has its own words for what it is made of, so that it needs no table
// of the language. They are the words of the table, and all of them.
func TestTheKindsOfTheTypedProcessAreTheWordsOfTheTable(t *testing.T) {
	const typed = "maltwright/lang/model"
	assert.ElementsMatch(t, ordered(vocabulary.Process), declaration.Constants(t, typed, "StageKind"))
	assert.ElementsMatch(t, ordered(vocabulary.Steep, vocabulary.Repeat, vocabulary.Germinate, vocabulary.Wither, vocabulary.Kiln),
		declaration.Constants(t, typed, "StepKind"))

	counted, found := vocabulary.Lookup(vocabulary.Batch, "counted")
	require.True(t, found)
	assert.ElementsMatch(t, counted.Slots[0].Words, []string{model.Chit, model.Acrospire})

	already, found := vocabulary.Lookup(vocabulary.Grain, vocabulary.FactAlready)
	require.True(t, found)
	assert.ElementsMatch(t, already.Slots[0].Words, []string{model.GreenMalt, model.KilnedMalt})

	changed, found := vocabulary.Lookup(vocabulary.Batch, "changed")
	require.True(t, found)
	to, found := changed.Clause(vocabulary.To)
	require.True(t, found)
	assert.ElementsMatch(t, to.Slots[1].Words, []string{model.ChangedAirflow, model.ChangedReturns, model.ChangedSmoke})
}

// ordered lists the statements whose place among the others of their block means
// something: stages of a process, steps of a stage.
func ordered(blocks ...vocabulary.Block) []string {
	var list []string
	for _, row := range vocabulary.Rows() {
		inOne := slices.ContainsFunc(row.In, func(b vocabulary.Block) bool { return slices.Contains(blocks, b) })
		if row.Ordered && inOne && !slices.Contains(list, row.Word) {
			list = append(list, row.Word)
		}
	}
	return list
}
