package check

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The end of a step with a time of its own that is written in the other half of the day is
// told, with both times and the one that fits; one that took somewhat longer is not.
func TestATimedStepThatTookSeveralTimesItsTimeIsTold(t *testing.T) {
	cure := func(at, clean string) []string {
		var out []string
		for _, f := range withSlip(t, bookSlip{file: "26-03", replaced: []string{"at 23:50 after cure", "at " + at + " after cure", "clean malt at 2026-03-15 02:07", "clean malt at " + clean}}) {
			if f.Rule == "time-doubtful" {
				out = append(out, f.Place.Text()+": "+f.Message+"; "+f.Hint)
			}
		}
		return out
	}
	late := cure("2026-03-15 11:50", "2026-03-15 14:07")
	require.Len(t, late, 1)
	assert.True(t, strings.HasPrefix(late[0], "2026-03-15 11:50: "), late[0])
	for _, words := range []string{"cure ended 17 h after dry 2", "gives it 5 h", "it would fit 12 h earlier, at 2026-03-14 23:50"} {
		assert.Contains(t, late[0], words)
	}
	odd := cure("2026-03-15 09:20", "2026-03-15 12:07") // 12 h less does not make it
	require.Len(t, odd, 1)
	assert.NotContains(t, odd[0], "would fit")
	assert.Empty(t, cure("2026-03-15 03:50", "2026-03-15 06:07"), "9 h")
}

// Malt that is as dry as asked only by the dry matter of its charge is told so, and with the
// number that was meant where one fits.
func TestAWeightThatTheChargeExplainsNamesTheSlipToo(t *testing.T) {
	found := withSlip(t, bookSlip{file: "26-03", replaced: []string{"5.13 kg at 23:50", "5.51 kg at 23:50"}})
	require.Len(t, found, 1)
	assert.Equal(t, "reading-doubtful", found[0].Rule)
	assert.Contains(t, found[0].Message, "only if no dry matter was lost")
	assert.Contains(t, found[0].Hint, "two digits swapped: 5.15 kg")
}
