package arrows

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// standsIn names the only files in which a constant of nature or of definition is
// written; the language and the physics do not see each other, so that some have two.
var standsIn = map[float64][]string{
	273.15:      {"lang/quantity/definition.go", "sim/air/constants.go"},
	459.67:      {"lang/quantity/table.go"},
	0.45359237:  {"lang/quantity/definition.go"},
	0.0254:      {"lang/quantity/definition.go"},
	0.3048:      nil,
	3.6e6:       {"lang/quantity/definition.go"},
	8.314462618: {"sim/air/constants.go"},
	2.501e6:     {"sim/air/constants.go"},
	1006:        {"sim/air/constants.go", "lang/read/heater.go"},
	1860:        {"sim/air/constants.go"},
	4187:        {"sim/air/constants.go"},
	101325:      {"sim/air/pressure.go"},
	0.621945:    {"sim/air/state.go"},
	17.4e6:      {"sim/grain/respiration.go"},
}

func TestAConstantStandsOnce(t *testing.T) {
	found := map[float64]map[string]bool{}
	require.NoError(t, filepath.WalkDir("../..", func(path string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		for value := range numbers(t, path) {
			if _, known := standsIn[value]; known {
				if found[value] == nil {
					found[value] = map[string]bool{}
				}
				found[value][strings.TrimPrefix(filepath.ToSlash(path), "../../")] = true
			}
		}
		return nil
	}))
	for value, files := range standsIn {
		var list []string
		for file := range found[value] {
			list = append(list, file)
		}
		assert.ElementsMatch(t, files, list, "%g", value)
	}
}

// numbers gives the values of the numbers written in a file of Go.
func numbers(t *testing.T, path string) map[float64]bool {
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
	require.NoError(t, err)
	values := map[float64]bool{}
	ast.Inspect(file, func(n ast.Node) bool {
		if lit, ok := n.(*ast.BasicLit); ok && (lit.Kind == token.FLOAT || lit.Kind == token.INT) {
			if value, err := strconv.ParseFloat(lit.Value, 64); err == nil {
				values[value] = true
			}
		}
		return true
	})
	return values
}
