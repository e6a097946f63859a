package visits

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A step that its guard ends before its condition holds has a look then that says so; one whose
// condition comes about has none.
func TestALookSaysWhereAGuardCameFirst(t *testing.T) {
	given := func(allow string) (missed []Task) {
		kiln := `kiln in "kiln" { dry at air-on 50 °C until moisture at most 8 % allow ` + allow + `; cure at air-on 80 °C for 4 h; cool to malt 30 °C }`
		list := listed(t, house+oneProcess(steepText+growText+kiln+"\n"))
		at := slices.IndexFunc(list, func(x Task) bool { return x.Kind == Heat })
		require.Positive(t, at)
		for _, x := range list {
			if x.Kind == Look && x.Missed {
				assert.Equal(t, list[at].At, x.At, "where the next step begins")
				assert.Equal(t, "moisture at most 8 %", x.Until)
				assert.Greater(t, x.Moisture, 0.08)
				missed = append(missed, x)
			}
		}
		return missed
	}
	assert.Len(t, given("1 to 3 h"), 1)
	assert.Empty(t, given("1 to 400 h"))
}

// The beginning of what waits for something says until when, and within which times.
func TestTheBeginningSaysWhatIsWaitedFor(t *testing.T) {
	kiln := `kiln in "kiln" { dry at air-on 50 °C until moisture at most 8 % allow 1 to 400 h; cure at air-on 80 °C for 4 h; cool to malt 30 °C }`
	list := listed(t, house+oneProcess(steepText+growText+kiln+"\n"))
	at := slices.IndexFunc(list, func(x Task) bool { return x.Kind == Load })
	require.Positive(t, at)
	assert.Equal(t, "moisture at most 8 %", list[at].Until)
	assert.InDelta(t, 3600, list[at].Earliest, 1e-6)
	assert.InDelta(t, 400*3600, list[at].Latest, 1e-6)
	at = slices.IndexFunc(list, func(x Task) bool { return x.Kind == Heat })
	assert.Zero(t, list[at].Earliest+list[at].Latest, "a step of its own time")
	assert.Empty(t, list[at].Until)
}
