package words

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/sums"
	"maltwright/lang/source/declaration"
	"maltwright/sim/reckon"
)

// keys lists the keys of a table of words.
func keys[K ~string, V any](table map[K]V) []string {
	var list []string
	for k := range table {
		list = append(list, string(k))
	}
	return list
}

func TestEverythingThatAnAnswerTellsHasItsWords(t *testing.T) {
	var told []string
	folders, err := filepath.Glob("../answer/*")
	require.NoError(t, err)
	for _, folder := range folders {
		if is, err := os.Stat(folder); err != nil || !is.IsDir() {
			continue
		}
		path := "maltwright/cmd/answer/" + filepath.Base(folder)
		for _, name := range declaration.Types(t, path, "maltwright/cmd/answer.Told") {
			told = append(told, path+"."+name)
		}
	}
	var said []string
	for of := range formatters {
		said = append(said, of.PkgPath()+"."+of.Name())
	}
	assert.ElementsMatch(t, told, said)
}

func TestEveryKindOfTaskDoubtAndLatenessHasItsWords(t *testing.T) {
	assert.ElementsMatch(t, declaration.Constants(t, "maltwright/sim/visits", "Kind"), keys(tasks))
	assert.ElementsMatch(t, declaration.Constants(t, "maltwright/sim/infer/follow", "DoubtKind"), keys(suspicions))
	assert.ElementsMatch(t, declaration.Constants(t, "maltwright/sim/infer/follow", "LateKind"), keys(late))
}

func TestEveryStepOfAWorkingIsWrittenDown(t *testing.T) {
	var written []string
	for of := range labellers {
		written = append(written, of.Name())
	}
	assert.ElementsMatch(t, declaration.Types(t, "maltwright/sim/reckon", "Step"), written)
}

func TestEveryNoteIsTold(t *testing.T) {
	notes := map[string]reckon.Note{"Lossless": reckon.Lossless{}, "OneCount": reckon.OneCount{}}
	for _, name := range declaration.Types(t, "maltwright/sim/reckon", "Note") {
		assert.NotEmpty(t, WorkingNote(sums.Note{Note: notes[name]}), name)
	}
}
