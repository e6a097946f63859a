package rules_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
)

func TestAThinBedThatWaitsForABreakIsToldToWaitForAMoisture(t *testing.T) {
	t.Parallel()
	for area, says := range map[string]string{"0.5 m2": "wait for a moisture", "0.04 m2": "give it more time"} {
		f := whatOf(t, "guard-came-first", map[string]string{
			"  area 0.5 m2": "  area " + area,
			"dry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h": "dry at air-on 45 °C until break allow 1 to 2 h",
		})
		assert.Contains(t, f, says, "%s of kiln", area)
	}
}

// whatOf gives what to do about the finding of a rule, in the base file with words replaced.
func whatOf(t *testing.T, rule string, replace map[string]string) string {
	t.Helper()
	base, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	text := string(base)
	for old, now := range replace {
		require.Contains(t, text, old)
		text = strings.Replace(text, old, now, 1)
	}
	for _, f := range check.File("case.malt", []byte(text), ".", nowhere{}, check.Options{}).Findings {
		if f.Rule == rule {
			return f.Hint
		}
	}
	require.Failf(t, "not found", "%s", rule)
	return ""
}
