// Package declaration is for tests of tables that must have a row for each type or constant
// of a kind: it lists those that a package declares, from what the compiler knows of it.
package declaration

import (
	"go/constant"
	"go/importer"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Types lists the exported types of a package that implement an interface, by name. The
// interface is one of the same package, such as Trouble, or of another one, such as
// maltwright/cmd/answer.Told.
func Types(t testing.TB, path, of string) []string {
	t.Helper()
	where, wanted := path, of
	if dot := strings.LastIndex(of, "."); dot >= 0 {
		where, wanted = of[:dot], of[dot+1:]
	}
	from := importing(t, path, where)
	found := from(where).Scope().Lookup(wanted)
	require.NotNil(t, found, "%s declares no %s", where, wanted)
	all := found.Type().Underlying().(*types.Interface)
	var list []string
	for name, is := range exported(from(path)) {
		if _, ok := is.(*types.TypeName); ok && !types.IsInterface(is.Type()) && types.Implements(is.Type(), all) {
			list = append(list, name)
		}
	}
	return list
}

// Constants gives the values of the exported constants of a type of a package, as Go
// writes them but for quotes: steep, 3.
func Constants(t testing.TB, path, of string) []string {
	t.Helper()
	var list []string
	for _, is := range exported(importing(t, path)(path)) {
		c, ok := is.(*types.Const)
		if !ok {
			continue
		}
		if named, ok := c.Type().(*types.Named); ok && named.Obj().Name() == of {
			if c.Val().Kind() == constant.String {
				list = append(list, constant.StringVal(c.Val()))
			} else {
				list = append(list, c.Val().ExactString())
			}
		}
	}
	require.NotEmpty(t, list, "%s declares no %s", path, of)
	return list
}

func exported(pkg *types.Package) map[string]types.Object {
	list := map[string]types.Object{}
	for _, name := range pkg.Scope().Names() {
		if token.IsExported(name) {
			list[name] = pkg.Scope().Lookup(name)
		}
	}
	return list
}

// importing reads what was compiled of packages and of all that they import.
func importing(t testing.TB, paths ...string) func(string) *types.Package {
	t.Helper()
	out, err := exec.Command("go", append([]string{"list", "-export", "-deps", "-f", "{{.ImportPath}} {{.Export}}"}, paths...)...).Output()
	require.NoError(t, err)
	files := map[string]string{}
	for line := range strings.Lines(string(out)) {
		name, file, _ := strings.Cut(strings.TrimSpace(line), " ")
		files[name] = file
	}
	from := importer.ForCompiler(token.NewFileSet(), "gc", func(path string) (io.ReadCloser, error) { return os.Open(files[path]) })
	return func(path string) *types.Package {
		pkg, err := from.Import(path)
		require.NoError(t, err)
		return pkg
	}
}

// Structs lists the exported structures of a package, by name.
func Structs(t testing.TB, path string) []string {
	t.Helper()
	var list []string
	for name, is := range exported(importing(t, path)(path)) {
		if _, ok := is.(*types.TypeName); ok {
			if _, ok := is.Type().Underlying().(*types.Struct); ok {
				list = append(list, name)
			}
		}
	}
	return list
}
