package arrows

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// justified are the words of the language that are written outside of its table all the
// same: a file or a folder, the words, none for any, and why.
var justified = []struct {
	in    string
	words []string
	why   string
}{
	{"lang/vocabulary/", nil, "the table itself"},
	{"lang/read/build", nil, "the tables of builders, by the word that each builds"},
	{"lang/read/table.go", nil, "the same"},
	{"lang/read/bounds.go", []string{"every"}, "a builder"},
	{"cmd/founding/", nil, "keys of answers and what people say; the texts that it writes are read before they are given"},
	{"lang/read/conflict.go", []string{"<", ">"}, "marks of a merge by lines"},
	{"lang/quantity/table.go", nil, "names of units"},
	{"sim/infer/evidence/evidencetest/", nil, "tests only: it writes records"},
	{"check/profile/grain_", nil, "one file for each grain, with its name"},
	{"check/rules/store-open.go", []string{"bag", "no"}, "English in the name of a store"},
	{"check/rules/reach.go", []string{"above"}, "English: on which side of what the kiln reaches"},
	{"sim/reckon/", []string{"times"}, "a unit"},
	{"lang/quantity/retell.go", []string{"to"}, "English: from so much to so much"},
	{"lang/syntax/pounds", nil, "tests only: which figures are differences"},
	{"lang/read/told.go", []string{"until", "when", "the", "in", "of", "from", "every"}, "English: how people tell of steps"},
	{"lang/calendar/", []string{"of", "is", "no", "at", "on"}, "English of dates, and languages"},
	{"cmd/", []string{"malt", "steep-out moisture"}, "headings and forms of what is shown"},
}

// callers are the folders whose functions take words of the language: there a word
// counts as an argument and in a list too. Elsewhere those are headings.
var callers = []string{"lang/", "sim/forecast/", "sim/infer/", "sim/seasons/", "sim/visits/", "check/profile/", "check/records/", "check/rules/"}

// languageWords are the words of statements, clauses, bounds, measures, limits, places
// and choices.
func languageWords() map[string]bool {
	set := map[string]bool{}
	add := func(list ...string) {
		for _, w := range list {
			set[w] = true
		}
	}
	slots := func(list []vocabulary.Slot) {
		for _, s := range list {
			add(s.Words...)
			add(s.Places...)
		}
	}
	for _, r := range vocabulary.Rows() {
		add(r.Word)
		slots(r.Slots)
		for _, c := range r.Clauses {
			slots(c.Slots)
		}
	}
	for _, m := range vocabulary.Measures() {
		add(append(m.Words, m.Word)...)
	}
	for _, l := range vocabulary.LimitNames() {
		add(l.Word)
	}
	add(vocabulary.ClauseWords()...)
	for op := quantity.AtLeast; op <= quantity.Below; op++ {
		add(append(vocabulary.Signs(op), op.String())...)
	}
	return set
}

// decides tells whether something is done by a literal: it is compared, a case or a
// key, or where a function takes words an argument or one of a list.
func decides(l *ast.BasicLit, parent ast.Node, takesWords bool) bool {
	switch p := parent.(type) {
	case *ast.CaseClause:
		return true
	case *ast.BinaryExpr:
		return p.Op == token.EQL || p.Op == token.NEQ
	case *ast.KeyValueExpr:
		return p.Key == ast.Expr(l)
	case *ast.IndexExpr:
		return p.Index == ast.Expr(l)
	case *ast.CompositeLit:
		list, ok := p.Type.(*ast.ArrayType)
		return ok && list.Len == nil && takesWords
	case *ast.CallExpr:
		return takesWords
	}
	return false
}

// whyWritten finds what justifies a word in a file, −1 where nothing does.
func whyWritten(name, word string) int {
	for i, j := range justified {
		if strings.HasPrefix(name, j.in) && (j.words == nil || slices.Contains(j.words, word)) {
			return i
		}
	}
	return -1
}

// What the language is stands in one table. Whoever does something by a word of it takes
// the word from there, or asks a column of its row.
func TestWordsOfTheLanguageAreWrittenInItsTableAlone(t *testing.T) {
	known, used, n := languageWords(), make([]bool, len(justified)), 0
	require.NoError(t, filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		name := strings.TrimPrefix(filepath.ToSlash(path), "../../")
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, path, nil, 0)
		require.NoError(t, err)
		takesWords := slices.ContainsFunc(callers, func(folder string) bool { return strings.HasPrefix(name, folder) })
		n++
		ast.PreorderStack(file, nil, func(node ast.Node, stack []ast.Node) bool {
			l, ok := node.(*ast.BasicLit)
			if !ok || l.Kind != token.STRING || !decides(l, stack[len(stack)-1], takesWords) {
				return true
			}
			word, err := strconv.Unquote(l.Value)
			require.NoError(t, err)
			if !known[word] {
				return true
			}
			if i := whyWritten(name, word); i >= 0 {
				used[i] = true
			} else {
				t.Errorf("%s:%d writes %q: take it from lang/vocabulary, or ask a column of the table", name, set.Position(l.Pos()).Line, word)
			}
			return true
		})
		return nil
	}))
	require.Greater(t, n, 200)
	for i, j := range justified {
		assert.True(t, used[i], "nothing of %s needs to be justified any more: %s", j.in, j.why)
	}
}
