package read

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
)

func TestShiftsAndDaysAwayAreReadAsWritten(t *testing.T) {
	h, found := load("site \"Hall\" {\n  awake 06:00 to 14:00 with 2 hands\n  awake 2 pm to 10 pm with 1 hand\n  away 2026-04-03 to 2026-04-06\n  away 2026-05-01\n}\n")
	require.Empty(t, found, golden.Findings(found))
	s := h.Sites[0]
	require.Len(t, s.Awake, 2)
	assert.Equal(t, [2]int{14 * 3600, 22 * 3600}, [2]int{s.Awake[1].From, s.Awake[1].To})
	n, known := s.Hands(15 * 3600)
	assert.True(t, known)
	assert.Equal(t, 1, n)
	require.Len(t, s.Away, 2)
	may := time.Date(2026, 5, 1, 0, 0, 0, 0, time.UTC)
	assert.True(t, s.AwayOn(may))
	assert.False(t, s.AwayOn(may.AddDate(0, 0, 1)))
	assert.True(t, s.AwayOn(time.Date(2026, 4, 6, 0, 0, 0, 0, time.UTC)))
	assert.Equal(t, "2026-04-03 to 2026-04-06", s.Away[0].Place.Text())
}

func TestShiftsThatCannotBeAreFound(t *testing.T) {
	for text, rule := range map[string]string{
		"away 2026-04-06 to 2026-04-03":              rangeUpsideDown.Name,
		"away 2026-04-31":                            badTime.Name,
		"away 2026-04-03 to 2026-04-31":              badTime.Name,
		"away 2026-04-03 to 14:00":                   wrongDimension.Name,
		"away 06:00 to 14:00":                        wrongDimension.Name,
		"away":                                       valueNeeded.Name,
		"awake 06:00 to 14:00 with 2 kernels":        wrongDimension.Name,
		"awake 06:00 to 14:00 with 1.5 hands":        wrongDimension.Name,
		"awake 06:00 to 14:00 with 0 hands":          outOfRange.Name,
		"awake 06:00 to 14:00; awake 07:00 to 12:00": unusualFigure.Name,
		"awake 06:00 to 07:00; awake 08:00 to 09:00": unusualFigure.Name,
	} {
		_, found := load("site \"Hall\" { " + text + " }\n")
		assert.True(t, has(found, rule), "%s: %s", text, golden.Findings(found))
	}
	_, found := load("site \"Hall\" { awake 06:00 to 14:00; awake 07:00 to 12:00 with 2 hands }\n")
	assert.Empty(t, found, "it brings hands")
}
