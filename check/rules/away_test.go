package rules_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
)

// What falls on a day when nobody is there is told with the hour that is written, and no
// start of that day is offered against it.
func TestNobodyThereIsNoNight(t *testing.T) {
	base, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	text := strings.NewReplacer("turn every 8 h", "turn at 07:00 and 12:00 and 19:00", "altitude 100 m", "altitude 100 m\n  away 2026-03-11").Replace(string(base))
	told := func(on string) (list []string) {
		for _, f := range check.File("x.malt", []byte(text), ".", nil, check.Options{On: on}).Findings {
			if f.Rule == "visit-at-night" {
				list = append(list, f.Message+"; "+f.Hint)
			}
		}
		return list
	}
	assert.Empty(t, told(""))
	list := told("2026-03-06")
	require.Len(t, list, 1)
	assert.Contains(t, list[0], "3 fall on days when nobody is there, the first of them a turn, on 2026-03-11 at 07:00; begin on 2026-03-1")
	assert.NotContains(t, list[0], "awake")
	assert.Empty(t, told("2026-03-12"))
}
