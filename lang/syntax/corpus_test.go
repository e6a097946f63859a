package syntax

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source"
)

// corpus is every process text of the project, whole or wrong, by name.
func corpus(t testing.TB) map[string]string {
	texts := map[string]string{}
	for _, pattern := range []string{"../../examples/*.malt", "../../check/testdata/*/*.malt"} {
		for _, path := range glob(t, pattern) {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			texts[path] = string(text)
		}
	}
	for _, pattern := range []string{"testdata/*.txtar", "../process/testdata/*.txtar", "../../check/rules/testdata/*.txtar"} {
		for _, path := range glob(t, pattern) {
			archive, err := txtar.ParseFile(path)
			require.NoError(t, err)
			for _, f := range archive.Files {
				if filepath.Ext(f.Name) == ".malt" {
					texts[path+"/"+f.Name] = string(f.Data)
				}
			}
		}
	}
	for _, r := range Rules() {
		texts[r.Name+", bad"], texts[r.Name+", good"] = r.Bad, r.Good
	}
	require.Greater(t, len(texts), 20)
	return texts
}

func glob(t testing.TB, pattern string) []string {
	paths, err := filepath.Glob(pattern)
	require.NoError(t, err)
	return paths
}

func parse(text string) (*Tree, []string) {
	tree, found := Parse(source.New("x.malt", []byte(text)))
	var lines []string
	for _, f := range found {
		lines = append(lines, f.Rule+": "+f.Place.Text())
	}
	return tree, lines
}
