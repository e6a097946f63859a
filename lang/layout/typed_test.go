package layout

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each reading of what people type is written in the one spelling, and that says the same.
func TestWhatPeopleTypeIsWrittenInOneWay(t *testing.T) {
	typed, err := os.ReadFile("testdata/typed.malt")
	require.NoError(t, err)
	want, err := os.ReadFile("testdata/typed-canonical.malt")
	require.NoError(t, err)
	tree, ok := parse(typed)
	require.True(t, ok)
	assert.Equal(t, string(want), string(Write(tree)))
	again, ok := parse(want)
	require.True(t, ok)
	assert.Equal(t, string(want), string(Write(again)))
	assert.Equal(t, string(Plain(again)), string(Plain(tree)))
}

// What may mean two things, or nothing, stays as it is.
func TestTheLayoutDecidesNothing(t *testing.T) {
	for text, want := range map[string]string{
		"turned at 2026-03-06 midnight":       "turned at 2026-03-06 midnight\n",
		"turned at 13 pm":                     "turned at 13 pm\n",
		"holds 1/2 3 lb":                      "holds 1/2 3 lb\n",
		"air 62 degrees":                      "air 62 degrees\n",
		"air 62 degrees; water 9 °C; x 50 °F": "air   62 degrees\nwater 9 °C\nx     50 °F\n",
		"air 62 °; water 50 °F":               "air   62 °\nwater 50 °F\n",
	} {
		tree, ok := parse([]byte(text + "\n"))
		require.True(t, ok, text)
		assert.Equal(t, want, string(Write(tree)))
		holds(t, []byte(text))
	}
	for text, want := range map[string]string{
		"cure 4 h at malt 82 °C for 5 h":           "cure at malt 82 °C for 5 h for 4 h",
		"cure 4 h 5 at malt 82 °C":                 "cure 5 at malt 82 °C for 4 h",
		"cure 4 h at least 5 h at malt 82 °C":      "cure at least 5 h at malt 82 °C for 4 h",
		"cure 82 °C":                               "cure 82 °C",
		"cure 4 at malt 82 °C":                     "cure 4 at malt 82 °C",
		"cool 4 h to malt 30 °C":                   "cool 4 h to malt 30 °C",
		"cure 4 h to 82 °C":                        "cure 4 h to 82 °C",
		"cure x 4 h at malt 82 °C":                 "cure x 4 h at malt 82 °C",
		"cure 4½ h from malt 50 to 82 °C over ½ h": "cure from malt 50 to 82 °C over 1/2 h for 4 1/2 h",
	} {
		text = "process \"p\" {\n  kiln in \"k\" {\n    " + text + "\n  }\n}\n"
		tree, ok := parse([]byte(text))
		require.True(t, ok, text)
		assert.Contains(t, string(Write(tree)), "\n    "+want+"\n")
		holds(t, []byte(text))
	}
}
