package arrows

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/vocabulary"
)

// words are the words of the language: of statements, clauses, bounds, measures, limits,
// places and choices.
func words() map[string]bool {
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
			add(c.Word)
			slots(c.Slots)
		}
	}
	for _, m := range vocabulary.Measures() {
		add(m.Word)
		add(m.Words...)
	}
	for _, l := range vocabulary.LimitNames() {
		add(l.Word)
	}
	for _, w := range []string{"at least","at most","is","above","below"} { add(w) }
	return set
}

func TestX(t *testing.T) {
	known := words()
	err := filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, path, nil, 0)
		require.NoError(t, err)
		var stack []ast.Node
		ast.Inspect(file, func(n ast.Node) bool {
			if n == nil {
				stack = stack[:len(stack)-1]
				return true
			}
			if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
				text, _ := strconv.Unquote(l.Value)
				if known[text] {
					kind := ""
					switch p := stack[len(stack)-1].(type) {
					case *ast.CaseClause: kind = "case"
					case *ast.BinaryExpr: kind = p.Op.String()
					case *ast.KeyValueExpr: if p.Key == n { kind = "key" } else {kind="value"}
					case *ast.IndexExpr: kind="index"
					case *ast.CompositeLit: kind="element"
					case *ast.CallExpr: kind="arg"
					case *ast.ValueSpec: kind="const"
					case *ast.AssignStmt: kind="assign"
					case *ast.ReturnStmt: kind="return"
					default: kind=fmt.Sprintf("%T", p)
					}
					fmt.Println(kind, set.Position(l.Pos()).String()[6:], text)
				}
			}
			stack = append(stack, n)
			return true
		})
		return nil
	})
	require.NoError(t, err)
}
