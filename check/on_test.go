package check

import (
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/read"
)

// The tests of the loft's barley are of 2 February 2026.
func TestTheDayOfTheFirstSoakTellsHowOldATestIs(t *testing.T) {
	text, err := os.ReadFile("../examples/pale.malt")
	require.NoError(t, err)
	root, err := read.OpenRoot("../examples")
	require.NoError(t, err)
	defer root.Close()
	old := func(on string) (found, unjudged int) {
		r := File("pale.malt", text, ".", root, Options{On: on, NoForecast: true})
		for _, f := range r.Findings {
			if f.Rule == "germination-test-old" {
				found++
				assert.Equal(t, finding.Note, f.Severity)
			}
		}
		return found, len(slices.DeleteFunc(unjudgedRules(r), func(rule string) bool { return rule != "germination-test-old" }))
	}
	for _, c := range []struct {
		on              string
		found, unjudged int
	}{{"", 0, 1}, {"2026-03-06", 0, 0}, {"2026-03-30", 0, 0}, {"2026-03-31", 2, 0}} {
		found, unjudged := old(c.on)
		assert.Equal(t, c.found, found, c.on)
		assert.Equal(t, c.unjudged, unjudged, c.on)
	}
}

func unjudgedRules(r Report) []string {
	var names []string
	for _, n := range r.NotJudged {
		names = append(names, n.Rule)
	}
	return names
}
