package command

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var (
	entry = regexp.MustCompile(`(?m)^\s*@\w+\s*\{\s*([^,\s]+)\s*,`)
	// cited is a key in square brackets, as in [asabe-d245] or [kunze, p. 110]. Links
	// of doc comments begin with a capital or hold a point.
	cited = regexp.MustCompile(`\[([a-z][a-z0-9]{2,}(?:-[a-z0-9]+)*)(?:,[^\]]*)?\]`)
)

// citations gives where each key is cited, of all comments below a folder.
func citations(t *testing.T, folder string) map[string]string {
	t.Helper()
	where := map[string]string{}
	err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		for _, group := range file.Comments {
			for _, m := range cited.FindAllStringSubmatch(group.Text(), -1) {
				where[m[1]] = path
			}
		}
		return nil
	})
	require.NoError(t, err)
	return where
}

func TestEverySourceThatIsCitedIsInTheListAndTheOtherWayRound(t *testing.T) {
	text, err := os.ReadFile("../../docs/sources.bib")
	if os.IsNotExist(err) {
		t.Skip("docs/sources.bib is not there yet: no key of a source could be looked up")
	}
	require.NoError(t, err)
	var keys []string
	for _, m := range entry.FindAllStringSubmatch(string(text), -1) {
		assert.NotContains(t, keys, m[1], "a key stands once")
		keys = append(keys, m[1])
	}
	require.NotEmpty(t, keys)
	where := citations(t, "../../sim")
	for key, path := range where {
		assert.True(t, slices.Contains(keys, key), "[%s] of %s is not in docs/sources.bib", key, path)
	}
	for _, key := range keys {
		assert.Contains(t, where, key, "nothing in sim cites it")
	}
}

func TestKeysOfSourcesAreToldFromOtherBrackets(t *testing.T) {
	for text, want := range map[string]string{
		"by [asabe-d245] for barley":       "asabe-d245",
		"as in [kunze, p. 110]":            "kunze",
		"see [Lot.Checked]":                "",
		"a link to [grain.Lot]":            "",
		"for x in [0, 1]":                  "",
		"a [0.0788(T−Tw) − 0.00417·M0] in": "",
		"exp[x]":                           "",
	} {
		got := ""
		if m := cited.FindStringSubmatch(text); m != nil {
			got = m[1]
		}
		assert.Equal(t, want, got, text)
	}
}
