package outside

import (
	"go/ast"
	"go/constant"
	"go/parser"
	"go/token"
	"go/types"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// constantRow is a line of the document's table of calibrated constants.
var constantRow = regexp.MustCompile("(?m)^\\| `(\\w+)` \\| ([0-9.]+) \\| ([^|]*)\\| ([^| ]+) \\| ([^|]+) \\|$")

// inCode is what a unit of the document is in the units of the code; the others are
// the same.
var inCode = map[string]float64{"h": 3600, "mm": 1e-3, "10⁻¹² m²/s": 1e-12, "kJ/mol": 1e3, "m³/h": 1.0 / 3600, "m³/h for each kg": 1.0 / 3600, "EBC/h": 1.0 / 3600}

// coded is a constant of the code.
type coded struct {
	value      float64
	calibrated bool // its comment says so
}

// constants reads every constant of sim that is a plain number, by file and name.
func constants(t *testing.T) map[string]coded {
	t.Helper()
	found := map[string]coded{}
	require.NoError(t, filepath.WalkDir("..", func(path string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		for _, d := range file.Decls {
			if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.CONST {
				readConstants(found, "sim"+strings.TrimPrefix(filepath.ToSlash(path), ".."), g)
			}
		}
		return nil
	}))
	return found
}

func readConstants(found map[string]coded, path string, g *ast.GenDecl) {
	for _, s := range g.Specs {
		spec := s.(*ast.ValueSpec)
		comment := spec.Doc.Text() + spec.Comment.Text()
		if len(g.Specs) == 1 {
			comment += g.Doc.Text()
		}
		for i, name := range spec.Names {
			if i >= len(spec.Values) {
				continue
			}
			if v, ok := number(types.ExprString(spec.Values[i])); ok {
				found[path+" "+name.Name] = coded{v, strings.Contains(strings.ToLower(comment), "calibrated")}
			}
		}
	}
}

// number evaluates an expression of numbers and of the constant hour.
func number(expression string) (float64, bool) {
	v, err := types.Eval(token.NewFileSet(), nil, token.NoPos, strings.ReplaceAll(expression, "hour", "3600.0"))
	if err != nil || v.Value == nil {
		return 0, false
	}
	value := constant.ToFloat(v.Value)
	if value.Kind() != constant.Float {
		return 0, false
	}
	x, _ := constant.Float64Val(value)
	return x, true
}

func TestTableOfCalibratedConstantsIsTheCode(t *testing.T) {
	text, err := os.ReadFile(document)
	require.NoError(t, err)
	code, listed := constants(t), map[string]bool{}
	for _, m := range constantRow.FindAllStringSubmatch(string(text), -1) {
		key := m[4] + " " + m[1]
		listed[key] = true
		value, err := strconv.ParseFloat(m[2], 64)
		require.NoError(t, err, key)
		c, ok := code[key]
		if !assert.True(t, ok, "%s is not in the code", key) {
			continue
		}
		scale := inCode[strings.TrimSpace(m[3])]
		if scale == 0 || m[1] == "pelegK1" { // kept in hours, as in its formula
			scale = 1
		}
		// the table gives four figures
		assert.True(t, math.Abs(value*scale-c.value) <= 5e-5*math.Abs(c.value), "%s: %g in the table, %g in the code", key, value*scale, c.value)
	}
	require.NotEmpty(t, listed)
	for key, c := range code {
		if c.calibrated {
			assert.True(t, listed[key], "%s is calibrated and not in the table", key)
		}
	}
}
