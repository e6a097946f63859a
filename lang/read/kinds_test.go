package read

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

// The typed process has its own words for what it is made of, so that it needs no table
// of the language. They are the words of the table, and all of them.
func TestTheKindsOfTheTypedProcessAreTheWordsOfTheTable(t *testing.T) {
	assert.ElementsMatch(t, ordered(vocabulary.Process), constants(t, "StageKind"))
	assert.ElementsMatch(t, ordered(vocabulary.Steep, vocabulary.Repeat, vocabulary.Germinate, vocabulary.Wither, vocabulary.Kiln), constants(t, "StepKind"))

	counted, found := vocabulary.Lookup(vocabulary.Batch, "counted")
	require.True(t, found)
	assert.ElementsMatch(t, counted.Slots[0].Words, []string{model.Chit, model.Acrospire})
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

// constants gives the values of the constants of a type of lang/model.
func constants(t *testing.T, of string) []string {
	files, err := filepath.Glob("../model/*.go")
	require.NoError(t, err)
	var list []string
	for _, path := range files {
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			spec, ok := n.(*ast.ValueSpec)
			if !ok {
				return true
			}
			if id, ok := spec.Type.(*ast.Ident); ok && id.Name == of && len(spec.Values) == 1 {
				word, err := strconv.Unquote(spec.Values[0].(*ast.BasicLit).Value)
				require.NoError(t, err)
				list = append(list, word)
			}
			return true
		})
	}
	return list
}
