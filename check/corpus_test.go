package check

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/read"
)

// checkFile checks a file from disk, with its folder as the root.
func checkFile(t testing.TB, path string) Report {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	root, err := read.OpenRoot(filepath.Dir(path))
	require.NoError(t, err)
	defer root.Close()
	return File(filepath.Base(path), text, ".", root, Options{})
}

// The schedules that people publish and use must not be called wrong. The source
// of each stands in its first lines.
func TestPublishedSchedulesRaiseNoFault(t *testing.T) {
	quiet(t, "testdata/schedules/*.malt")
}

func TestExamplesRaiseNoFault(t *testing.T) {
	quiet(t, "../examples/*.malt")
	quiet(t, "../examples/batches/*.malt")
}

// A home house in lb and °F, and a craft house with boxes and a floor: nothing at all is
// found in them.
func TestWholeHousesAreClean(t *testing.T) {
	for _, pattern := range []string{"../examples/home/*.malt", "../examples/hall/*.malt", "../examples/mill/*.malt"} {
		files, err := filepath.Glob(pattern)
		require.NoError(t, err)
		require.NotEmpty(t, files)
		for _, path := range files {
			for _, f := range checkFile(t, path).Findings {
				assert.Fail(t, f.Message, "%s [%s]", path, f.Rule)
			}
		}
	}
}

func quiet(t *testing.T, pattern string) {
	files, err := filepath.Glob(pattern)
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, path := range files {
		t.Run(filepath.Base(path), func(t *testing.T) {
			for _, f := range checkFile(t, path).Findings {
				assert.Less(t, f.Severity, finding.Fault, "%s [%s]", f.Message, f.Rule)
				assert.NotEmpty(t, strings.TrimSpace(f.Place.Text()), "%s stands at no words: %s", f.Rule, f.Message)
			}
		})
	}
}
