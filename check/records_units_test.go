package check

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check/records"
	"maltwright/lang/read"
	"maltwright/lang/syntax/pounds"
)

// metricFigure is a figure in a unit that a house of pounds does not read.
var metricFigure = regexp.MustCompile(`\d ?(°C|K|kg|g|l|ml|m2|m3)([^\w/²³]|$)`)

// pounded is a figure in a unit that it does read.
var pounded = regexp.MustCompile(`\d (°F|lb|oz)([^\w]|$)`)

// A record in °F and lb is spoken of in them too: what is said of each wrong example is
// put into the units in which it is written.
func TestRecordsAreSpokenOfInTheirOwnUnits(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	paths, err := filepath.Glob("../examples/batches/*.malt")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(folder, filepath.Base(path)), []byte(pounds.Written(string(text))), 0o644))
	}
	text, err := os.ReadFile(book + "26-03.malt")
	require.NoError(t, err)
	record := plainLines(string(text))
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	told := 0
	for _, r := range records.Rules() {
		bad := pounds.Written(put(record, strings.Split(r.Good, "\n"), strings.Split(r.Bad, "\n")))
		require.NotRegexp(t, `\d (°C|kg)\b`, bad)
		var rules []string
		for _, f := range File("x.malt", []byte(bad), ".", root, Options{}).Findings {
			if f.Place.File.Name() != "x.malt" {
				continue
			}
			rules = append(rules, f.Rule)
			for _, said := range []string{f.Message, f.Why, f.Hint} {
				assert.NotRegexp(t, metricFigure, said, f.Rule)
				if pounded.MatchString(said) {
					told++
				}
			}
		}
		assert.Contains(t, rules, r.Name, "it is found in these units too")
	}
	assert.Greater(t, told, 2, "findings have figures of their own")
}
