package arrows

import (
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// moduleRow is a line of a table of docs/dependencies.md, of one module or of several that come
// together.
var (
	moduleRow  = regexp.MustCompile("(?m)^\\| (`[^|]+`) \\|")
	moduleName = regexp.MustCompile("`([^`]+)`")
)

// stated gives the modules of a section of docs/dependencies.md.
func stated(t *testing.T, section string) []string {
	t.Helper()
	page, err := os.ReadFile("../../docs/dependencies.md")
	require.NoError(t, err)
	_, text, found := strings.Cut(string(page), "\n## "+section+"\n")
	require.True(t, found, "no section %q", section)
	text, _, _ = strings.Cut(text, "\n## ")
	var list []string
	for _, row := range moduleRow.FindAllStringSubmatch(text, -1) {
		for _, name := range moduleName.FindAllStringSubmatch(row[1], -1) {
			list = append(list, name[1])
		}
	}
	return list
}

// modules gives the modules of others that the listed packages are of.
func modules(t *testing.T, args ...string) []string {
	t.Helper()
	const other = `{{with .Module}}{{if not .Main}}{{.Path}}{{end}}{{end}}`
	list := slices.Compact(slices.Sorted(slices.Values(goList(t, append([]string{"-f", other}, args...)...))))
	require.NotEmpty(t, list)
	return list
}

// goList gives the lines that go list writes in the module, empty ones left out.
func goList(t *testing.T, args ...string) []string {
	t.Helper()
	list := exec.Command("go", append([]string{"list"}, args...)...)
	list.Dir = "../.."
	out, err := list.Output()
	require.NoError(t, err)
	return strings.Fields(string(out))
}

func TestThePageOfDependenciesIsTrue(t *testing.T) {
	program := modules(t, "-deps", "./cmd/maltwright")
	assert.ElementsMatch(t, program, stated(t, "In the program"))
	tests := slices.DeleteFunc(modules(t, "-test", "-deps", "./..."), func(path string) bool { return slices.Contains(program, path) })
	assert.ElementsMatch(t, tests, stated(t, "In tests only"))
}
