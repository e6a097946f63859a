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
	for area, says := range map[string]string{"0.5 m2": "wait for a moisture", "0.04 m2": "allow more time"} {
		f := whatOf(t, "guard-came-first", map[string]string{
			"  area 0.5 m2": "  area " + area,
			"dry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h": "dry at air-on 45 °C until break allow 1 to 2 h",
		})
		assert.Contains(t, f, says, "%s of kiln", area)
	}
}

func TestWhatOvergrowsWhileItWithersIsNotHeldBackByTheGrowth(t *testing.T) {
	t.Parallel()
	const air, until, allow = "    air at 18 to 20 °C\n", "    until moisture at most 38 %", "    allow 4 to 30 h"
	withered := whatOf(t, "too-long-to-modify", map[string]string{
		"acrospire at least 3/4": "acrospire at least 7/8",
		air:                      air + "    humidity 96 %\n", until: "    until moisture at most 30 %", allow: "    allow 4 to 80 h"})
	assert.Contains(t, withered, "the piece grows on while it withers")
	held := whatOf(t, "too-long-to-modify", map[string]string{"allow 4 to 8 days": "allow 9 to 12 days"})
	assert.Contains(t, held, "its earliest time keeps it growing until 9 d")
}

func TestABedOnOneSideOfItsBandIsToldWhatHelps(t *testing.T) {
	t.Parallel()
	const area, humidity = "  area 0.22 m2", "    humidity 95 to 99 %"
	box := func(air string) string {
		return whatOf(t, "air-cannot-hold-bed", map[string]string{area: "  area 0.008 m2\n  airflow 3 m3/h\n  heater 100 W\n  cooler 200 W", humidity: "    air at air-on " + air})
	}
	assert.Equal(t, "blow colder air, or more of it", box("15.8 to 15.9 °C"))
	assert.Contains(t, box("8 °C"), "blow warmer air, or less")
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
