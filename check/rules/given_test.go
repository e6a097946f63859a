package rules_test

import (
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
)

// The hours that a cure is said to lack are those that the forecast lacks: with them it is
// long enough, and with four fifths of them it is not.
func TestTheHoursThatACureLacksAreEnough(t *testing.T) {
	base, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	cured := func(heat string, minutes float64) (hint string) {
		text := strings.Replace(string(base), "cure at air-on 82 °C for 5 h", "cure at "+heat+" for "+strconv.FormatFloat(minutes, 'f', 0, 64)+" min", 1)
		text = strings.Replace(text, "gate moisture at most 5 % allow 0 to 4 h\n", "", 1)
		for _, f := range check.File("case.malt", []byte(text), ".", nowhere{}, check.Options{}).Findings {
			if f.Rule == "cure-cool-or-short" {
				hint = f.Hint
			}
		}
		return hint
	}
	for _, c := range []struct {
		heat    string
		minutes float64
	}{{"air-on 80 °C", 90}, {"malt 82 °C", 45}, {"air-on 75 °C", 240}, {"air-on 180 °F", 60}} {
		hint := cured(c.heat, c.minutes)
		more := regexp.MustCompile(`^(?:([0-9]+) h)? ?(?:([0-9]+) min)? more`).FindStringSubmatch(hint)
		require.NotNil(t, more, "%s for %v min: %s", c.heat, c.minutes, hint)
		h, _ := strconv.ParseFloat(more[1], 64) // "" where there is none
		m, _ := strconv.ParseFloat(more[2], 64)
		lacks := 60*h + m
		require.NotZero(t, lacks, hint)
		assert.Empty(t, cured(c.heat, c.minutes+1.1*lacks), "%s: %v min more", c.heat, lacks)
		assert.NotEmpty(t, cured(c.heat, c.minutes+0.5*lacks), "%s: half of %v min more", c.heat, lacks)
	}
}
