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
		"turned at 03/04/2026 7h15":           "turned at 03/04/2026 07:15\n",
		"turned at 27 Jan 7:15":               "turned at 27 Jan 07:15\n",
		"turned at 30.02.2026 7:15":           "turned at 30.02.2026 07:15\n",
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

func TestDatesAndTimesAreWrittenInOneWay(t *testing.T) {
	for text, want := range map[string]string{
		"turned at 27.01.2026 07.15":                "turned at 2026-01-27 07:15",
		"turned at 1/27/2026, 6:45am":               "turned at 2026-01-27 06:45",
		"turned at 2026/1/27 7h15":                  "turned at 2026-01-27 07:15",
		"turned at January 27th, 2026 at 6.45 p.m.": "turned at 2026-01-27 18:45",
		"turned at 27 Jan 2026 14 Uhr":              "turned at 2026-01-27 14:00",
		"turned at 14:00 on 27 Jan 2026":            "turned at 2026-01-27 14:00",
		"turned at Tue 27/01/2026 noon":             "turned at 2026-01-27 12:00",
		"turned at 20260127T0715":                   "turned at 2026-01-27 07:15",
		"germination 97 % on 6 March 2026":          "germination 97 % on 2026-03-06",
		"away 24.12.2026 to 26.12.2026":             "away 2026-12-24 to 2026-12-26",
		"began at 2026-03-06 at 7:00":               "began 2026-03-06 07:00",
		"began on Fri 6 March 2026 at 7 am":         "began 2026-03-06 07:00",
		"awake between 6:30 and 22:30":              "awake 06:30 to 22:30",
		"awake 06:30 until 22:30":                   "awake 06:30 to 22:30",
		"awake 6:30am-10:30pm":                      "awake 06:30 to 22:30",
		"away from 2026-04-03 to 2026-04-06":        "away 2026-04-03 to 2026-04-06",
		"turned at 27. Januar 2026 7 Uhr":           "turned at 2026-01-27 07:00",
		"awake 6h30 to 22h":                         "awake 06:30 to 22:00",
		"awake 06.30 to midnight":                   "awake 06:30 to 24:00",
	} {
		tree, ok := parse([]byte(text + "\n"))
		require.True(t, ok, text)
		assert.Equal(t, want+"\n", string(Write(tree)))
		holds(t, []byte(text))
	}
}
