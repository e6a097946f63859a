package vocabulary_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// terms reads a text behind a verb.
func terms(t *testing.T, text string) []syntax.Term {
	t.Helper()
	tree, found := syntax.Parse(source.New("x", []byte("verb "+text)))
	require.Empty(t, found, text)
	require.Len(t, tree.Top.Statements, 1)
	return tree.Top.Statements[0].Terms
}

func TestEveryWordOfASlotIsReadAsOneWord(t *testing.T) {
	n := 0
	check := func(slots []vocabulary.Slot) {
		for _, s := range slots {
			for _, w := range slices.Concat(s.Words, s.Places) {
				list := terms(t, w)
				require.Len(t, list, 1, w)
				assert.IsType(t, syntax.Word{}, list[0], w)
				n++
			}
		}
	}
	for _, r := range vocabulary.Rows() {
		check(r.Slots)
		for _, c := range r.Clauses {
			check(c.Slots)
		}
	}
	assert.Greater(t, n, 100)
}

func TestEveryClauseOfARowIsReadAsAClause(t *testing.T) {
	for _, r := range vocabulary.Rows() {
		for _, c := range r.Clauses {
			tree, found := syntax.Parse(source.New("x", []byte("verb "+c.Word+" x")))
			require.Empty(t, found, c.Word)
			require.Len(t, tree.Top.Statements[0].Clauses, 1, c.Word)
		}
	}
}

func TestEveryBoundIsReadAsOne(t *testing.T) {
	for _, text := range []string{"at least", "at  most", "is", "above", "below", ">=", "=>", "≥", "<=", "=<", "≤", "=", "==", ">", "<"} {
		list := terms(t, text+" 5 %")
		require.Len(t, list, 1, text)
		b, ok := list[0].(syntax.Bounded)
		require.True(t, ok, text)
		_, known := vocabulary.BoundOp(b.Bound.Text)
		assert.True(t, known, text)
	}
}

func TestTheNumberOfAStepIsNoEndOfARange(t *testing.T) {
	tree, found := syntax.Parse(source.New("x", []byte("changed soak 3 to 5 h")))
	require.Empty(t, found)
	assert.Len(t, tree.Top.Statements[0].Terms, 2)
	require.Len(t, tree.Top.Statements[0].Clauses, 1)
	assert.Equal(t, vocabulary.To, tree.Top.Statements[0].Clauses[0].Word.Text)
}
