package outside

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

const bibliography = "../../docs/sources.bib"

// A key in brackets, as it stands in a comment or a document; what follows tells a
// Markdown link.
var cited = regexp.MustCompile(`\[([a-z][a-z0-9-]+)\](.?)`)

// An entry of the bibliography, and the standing in its note.
var (
	entry    = regexp.MustCompile(`(?m)^@[a-z]+\{([^,\s]+),$`)
	standing = regexp.MustCompile(`note\s*=\s*\{standing: (published|handbook, from memory|seen)[;}]`)
)

// keysOf adds the keys cited in a text, with where.
func keysOf(keys map[string]string, text, where string) {
	for _, m := range cited.FindAllStringSubmatch(text, -1) {
		if m[2] != "(" {
			keys[m[1]] = where
		}
	}
}

// citations gathers every key cited in comments below the folders, in the rows of
// the table and in the documents.
func citations(t *testing.T) map[string]string {
	t.Helper()
	keys := map[string]string{}
	for _, folder := range []string{"..", "../../lang/quantity", "../../cmd/chart"} {
		require.NoError(t, filepath.WalkDir(folder, func(path string, _ fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") {
				return err
			}
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
			if err != nil {
				return err
			}
			for _, group := range file.Comments {
				keysOf(keys, group.Text(), path)
			}
			return nil
		}))
	}
	for _, s := range table() {
		for _, r := range s.rows {
			if r.key != "" {
				keys[r.key] = "the table of outside checks, " + s.title
			}
		}
	}
	for _, path := range []string{document, "../../docs/limits.md"} {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		keysOf(keys, string(text), path)
	}
	return keys
}

func TestEveryKeyThatIsCitedIsInTheBibliographyAndTheOtherWay(t *testing.T) {
	text, err := os.ReadFile(bibliography)
	require.NoError(t, err)
	var known []string
	for _, m := range entry.FindAllStringSubmatch(string(text), -1) {
		assert.NotContains(t, known, m[1], "stands twice")
		known = append(known, m[1])
	}
	require.NotEmpty(t, known)
	assert.True(t, slices.IsSorted(known), "the bibliography is in the order of its keys")
	keys := citations(t)
	for key, where := range keys {
		assert.Contains(t, known, key, "cited in %s", where)
	}
	for _, key := range known {
		assert.Contains(t, keys, key, "nobody cites it")
	}
}

func TestEverySourceSaysItsStanding(t *testing.T) {
	text, err := os.ReadFile(bibliography)
	require.NoError(t, err)
	for _, part := range strings.Split(string(text), "\n@")[1:] {
		key, _, _ := strings.Cut(part, ",")
		assert.Regexp(t, standing, part, key)
		for _, field := range []string{"author", "title", "year"} {
			assert.Regexp(t, `(?m)^  `+field+` = \{.+\},$`, part, "%s of %s", field, key)
		}
	}
}
