package words

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/declared"
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
		for _, name := range declared.Types(t, path, "maltwright/cmd/answer.Told") {
			told = append(told, path+"."+name)
		}
	}
	var said []string
	for of := range sayers {
		said = append(said, of.PkgPath()+"."+of.Name())
	}
	assert.ElementsMatch(t, told, said)
}

func TestEveryKindOfTaskAndOfDoubtHasItsWords(t *testing.T) {
	assert.ElementsMatch(t, declared.Constants(t, "maltwright/sim/visits", "Kind"), keys(tasks))
	assert.ElementsMatch(t, declared.Constants(t, "maltwright/sim/infer/follow", "DoubtKind"), keys(suspicions))
}
