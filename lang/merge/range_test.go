package merge

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A range merges as one value: whoever only wrote its units otherwise changed nothing.
func TestARangeInOtherUnitsGivesWayToOneWithOtherEnds(t *testing.T) {
	frame := func(allow string) string {
		return "process \"p\" {\n  germinate on \"f\" {\n    allow " + allow + "\n  }\n}\n"
	}
	for _, c := range []struct{ base, ours, theirs, want string }{
		{"4 to 8 days", "4 days to 8 days", "4 to 9 days", "4 to 9 days"},
		{"4 h to 1 day", "4 to 24 h", "5 h to 1 day", "5 h to 1 day"},
		{"1 h 30 min to 2 h", "90 to 120 min", "1 h 45 min to 2 h", "1 h 45 min to 2 h"},
		{"5 lb 4 oz to 6 lb", "84 to 96 oz", "5 lb 4 oz to 6 lb 8 oz", "5 lb 4 oz to 6 lb 8 oz"},
		{"4 to 8 days", "4 to 192 h", "4 h to 8 days", "4 h to 8 days"}, // both mean four hours
		{"4 to 8 days", "4 days to 192 h", "96 h to 8 days", ""},        // nobody changed it
	} {
		for _, swapped := range []bool{false, true} {
			ours, theirs := c.ours, c.theirs
			if swapped {
				ours, theirs = theirs, ours
			}
			got, unsettled := merged(t, frame(c.base), frame(ours), frame(theirs))
			assert.Zero(t, unsettled, "%s, %s and %s:\n%s", c.base, ours, theirs, got)
			if c.want != "" {
				assert.Equal(t, tidy(t, frame(c.want)), got)
			}
		}
	}
	got, unsettled := merged(t, frame("4 to 8 days"), frame("4 to 8 h"), frame("4 h to 8 days"))
	assert.Equal(t, 1, unsettled, "the unit of one end, and of both, are two changes of one value")
	assert.Contains(t, got, "ours 4 to 8 h; theirs 4 h to 8 days; before 4 to 8 days")
}
