package outline

import (
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// texts are the files of a folder, by their paths.
type texts map[string]string

func (x texts) Paths() []string { return slices.Sorted(maps.Keys(x)) }

func (x texts) Tree(at string) (*syntax.Tree, []finding.Finding, error) {
	text, ok := x[at]
	if !ok {
		return nil, nil, fs.ErrNotExist
	}
	tree, found := syntax.Parse(source.New(at, []byte(text)))
	return tree, found, nil
}

// with makes the edits in a copy.
func (x texts) with(edits []Edit) texts {
	out := maps.Clone(x)
	for _, e := range slices.Backward(edits) {
		out[e.Path] = out[e.Path][:e.Place.Start] + e.New + out[e.Path][e.Place.End:]
	}
	return out
}

// at is the place of a text in a file, in its middle.
func (x texts) at(t testing.TB, file, text string) int {
	t.Helper()
	i := strings.Index(x[file], text)
	require.GreaterOrEqual(t, i, 0, "%s in %s", text, file)
	return i + len(text)/2
}

// below reads the files of a folder of the project and of those below it.
func below(t testing.TB, dir string) texts {
	t.Helper()
	x := texts{}
	err := filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(p) != ".malt" {
			return err
		}
		text, err := os.ReadFile(p)
		rel, _ := filepath.Rel(dir, p)
		x[filepath.ToSlash(rel)] = string(text)
		return err
	})
	require.NoError(t, err)
	return x
}

// examples are the folders of the examples, each as a house has it.
func examples(t testing.TB) map[string]texts {
	all := below(t, "../../examples")
	folders := map[string]texts{}
	for p, text := range all {
		dir := filepath.Dir(p)
		if dir == "broken" { // each is a house of its own
			folders[p] = texts{filepath.Base(p): text}
			for _, used := range []string{"loft.malt"} {
				if strings.Contains(text, used) && all["broken/"+used] != "" {
					folders[p][used] = all["broken/"+used]
				}
			}
			continue
		}
		if folders[dir] == nil {
			folders[dir] = texts{}
		}
		folders[dir][filepath.Base(p)] = text
	}
	require.Greater(t, len(folders), 5)
	return folders
}
