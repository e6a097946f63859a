package journal_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/journal"
)

// What people type otherwise than a record has it is told with the line to type, which reads.
func TestWhatIsTypedOtherwiseIsToldWithTheLine(t *testing.T) {
	for typed, want := range map[string]string{
		"changed rest 1 to 20 h":                     `write changed rest 1 to 20 h because "..."`,
		"smells like cucumbers, kids didn't like it": `write remark "smells like cucumbers, kids didn't like it"`,
		"3,65 kg":                      "write weighed 3.65 kg",
		"17,5 °C":                      "write 17.5 °C",
		"weighed 7,38 kg after soak 1": "write weighed 7.38 kg after soak 1",
		"air 14 °C at today 23:40":     "that time has not come yet, for it is Fri 14:05; if it was read before, write yesterday 23:40",
		"air 14 °C at fri 23:40":       "that time has not come yet, for it is Fri 14:05; if it was read before, write 2026-02-27 23:40",
	} {
		_, err := entered(t, began, journal.Reading{Words: strings.Fields(typed)})
		assert.ErrorContains(t, err, want, typed)
		_, line, found := strings.Cut(want, "write ")
		if !found || strings.Contains(want, "come yet") {
			continue
		}
		_, err = entered(t, began, journal.Reading{Words: []string{line}})
		assert.NoError(t, err, line)
	}
}

// A time within a reading is said as behind --at.
func TestATimeWithinAReadingIsSaidAsPeopleSayIt(t *testing.T) {
	for typed, want := range map[string]string{
		"air 14 °C at fri 11:40":                 "read air 14 °C at 2026-03-06 11:40",
		"air 14 °C at today 11:40":               "read air 14 °C at 2026-03-06 11:40",
		"weighed 7.1 kg at 1 h ago after soak 1": "weighed 7.1 kg at 2026-03-06 13:05 after soak 1",
		`remark "it lies at fri 11:40"`:          `remark "it lies at fri 11:40" at 2026-03-06 14:05`,
	} {
		e, err := entered(t, began, journal.Reading{Words: strings.Fields(typed)})
		if assert.NoError(t, err, typed) {
			assert.Equal(t, want, strings.Join(strings.Fields(e.Words()), " "))
		}
	}
	for _, at := range []string{"today 23:40", "fri 23:40"} {
		_, err := entered(t, began, journal.Reading{Words: []string{"air 14 °C"}, At: at})
		assert.ErrorContains(t, err, "that time has not come yet", at)
	}
	_, err := entered(t, began, journal.Reading{Words: []string{"air 14 °C"}, At: "2026-03-06 13:00"})
	require.NoError(t, err)
}

// A first weight that is off by what the vessel weighs was taken with it; one that is near is not doubted.
func TestAFirstWeightWithTheVesselIsDoubted(t *testing.T) {
	for line, doubted := range map[string]bool{"weighed 8.33 kg after soak 1": true, "weighed 7.4 kg after soak 1": false, "weighed 8.33 kg in \"blue tub\" after soak 1": false} {
		e, err := entered(t, began, journal.Reading{Words: []string{line}, At: "2026-03-06 14:00"})
		require.NoError(t, err)
		doubts, err := e.Judge(t.Context())
		require.NoError(t, err)
		if !doubted {
			assert.Empty(t, doubts, line)
			continue
		}
		if assert.Len(t, doubts, 1, line) {
			assert.Regexp(t, `^8.33 kg is \d.\d\d? kg more than forecast, and "blue tub" weighs 990 g: was it on the scale\?$`, doubts[0].Message)
			assert.Equal(t, `if it was, write in "blue tub" behind the weight`, doubts[0].Hint)
		}
	}
}
