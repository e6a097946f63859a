package arrows

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// named are the files and folders that a page names from the root: `lang/read`, with
// a * for any.
var named = regexp.MustCompile("`((?:lang|sim|check|cmd|docs|examples|\\.ci)/[\\w./*-]+)`")

func TestWhatTheGuideNamesIsThere(t *testing.T) {
	text, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	found := named.FindAllStringSubmatch(string(text), -1)
	require.NotEmpty(t, found)
	for _, m := range found {
		there, err := filepath.Glob(filepath.Join("../..", m[1]))
		require.NoError(t, err, m[1])
		assert.NotEmpty(t, there, "%s is not there", m[1])
	}
}
