package outline

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/contrast"
	"maltwright/lang/read"
	"maltwright/lang/source/golden"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Every name of every example is given another and its old one back: each file reads, means the same but for the
// name, and what is found in it is the same.
func TestEveryNameOfEveryExampleCanBeRenamedAndBack(t *testing.T) {
	names := 0
	for dir, x := range examples(t) {
		f := In(x)
		for _, p := range x.Paths() {
			tree, _, _ := x.Tree(p)
			for i, n := range Names(tree) {
				if names++; !golden.Long() && names%61 != 0 {
					continue
				}
				to := rapid.StringMatching(`[A-Za-z°ä🌾][a-z0-9 '#{}.-]{0,12}[a-z]`).Example(names)
				edits, err := f.Rename(p, n.Place.Start, to, nil)
				if err != nil {
					assert.IsType(t, Refusal(""), err)
					assert.Contains(t, dir, "broken", "%s, %s: %v", p, n.Text, err)
					continue
				}
				require.NotEmpty(t, edits, "%s, %s", p, n.Text)
				there := x.with(edits)
				assertSameButNames(t, x, there)
				assertSameFound(t, x, there)
				after, _, _ := there.Tree(p)
				back, err := In(there).Rename(p, Names(after)[i].Place.Start, n.Text, nil)
				require.NoError(t, err, "%s, %s", p, n.Text)
				for file, text := range there.with(back) {
					require.Equal(t, x[file], text, "%s, %s, %s", file, p, n.Text)
				}
			}
		}
	}
	assert.Greater(t, names, 500)
}

// assertSameButNames asks that the files of two folders differ in nothing but names.
func assertSameButNames(t *testing.T, a, b texts) {
	t.Helper()
	require.Equal(t, a.Paths(), b.Paths())
	for _, p := range a.Paths() {
		if a[p] == b[p] {
			continue
		}
		was, _, _ := a.Tree(p)
		is, found, _ := b.Tree(p)
		require.Empty(t, found, "%s does not read:\n%s", p, b[p])
		unname(was)
		unname(is)
		assert.Empty(t, contrast.Files([]*syntax.Tree{was}, []*syntax.Tree{is}), p)
	}
}

// unname gives everything in a tree that has a name, and the signs of a pin, the same one.
func unname(tree *syntax.Tree) {
	names := map[int]bool{}
	for _, n := range Names(tree) {
		names[n.Place.Start] = true
	}
	one := func(terms []syntax.Term) {
		for i, t := range terms {
			if text, ok := t.(syntax.Text); ok && names[text.Start] {
				text.Value = "name"
				terms[i] = text
			}
		}
	}
	tree.Top.Walk(func(s *syntax.Statement) {
		if row, ok := vocabulary.Lookup(vocabulary.Batch, s.Verb.Text); ok && row.Word == "pinned" {
			s.Terms = nil
		}
		one(s.Terms)
		for _, c := range s.Clauses {
			one(c.Terms)
		}
	})
}

// assertSameFound asks that reading the files of two folders finds the same, by rules and lines.
func assertSameFound(t *testing.T, a, b texts) {
	t.Helper()
	for _, p := range a.Paths() {
		assert.Equal(t, foundIn(a, p), foundIn(b, p), p)
	}
}

func foundIn(x texts, p string) (list []string) {
	_, found := read.Load(p, []byte(x[p]), ".", In(x))
	for _, one := range found {
		at := "nowhere"
		if one.Place.Known() {
			at = fmt.Sprintf("%s:%d", one.Place.File.Name(), one.Place.File.Position(one.Place.Start, 0).Line)
		}
		list = append(list, fmt.Sprintf("%s %s %s", at, one.Severity, one.Rule))
	}
	return list
}
