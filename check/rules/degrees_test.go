package rules_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/lang/finding"
	"maltwright/lang/syntax/pounds"
)

// withCure is the base with another cure on a kiln that reaches so much, in °F and lb where
// all else is.
func withCure(t *testing.T, inPounds bool, reaches, cure string) string {
	t.Helper()
	base, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	text := strings.Replace(string(base), "cure at air-on 82 °C for 5 h", "CURE", 1)
	require.Contains(t, text, "CURE")
	before, rest, found := strings.Cut(text, "  reaches ")
	require.True(t, found)
	_, rest, _ = strings.Cut(rest, "\n")
	text = before + "  REACHES\n" + rest
	if inPounds {
		text = pounds.Written(text)
	}
	return strings.NewReplacer("CURE", cure, "REACHES", "reaches "+reaches).Replace(text)
}

// A cure that is written in the other scale of degrees is told as that, and no rule of
// roasting speaks of it.
func TestWrongDegreesAreToldAsThat(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		pounds              bool
		reaches, cure, hint string
		rule                string
	}{
		"°C among °F":                  {true, "70 to 500 °F", "cure at air-on 185 °C for 4 h", "if °F was meant, write 185 °F, which is 85 °C; if not, ", "equipment-cannot"},
		"°F in an oven that is metric": {false, "20 to 95 °C", "cure at air-on 180 °C for 4 h", "if °F was meant, write 180 °F, which is 82 °C; if not, ", "equipment-cannot"},
		"°F for °C":                    {false, "20 to 95 °C", "cure at air-on 82 °F for 4 h", "", ""}, // the kiln does reach it: that a cure is cool is told otherwise
		"°F below the reach":           {false, "30 to 95 °C", "cure at air-on 82 °F for 4 h", "if °C was meant, write 82 °C, which is 180 °F; if not, ", "equipment-cannot"},
		"too hot in its own scale":     {false, "20 to 240 °C", "cure at air-on 185 °C for 4 h", "", "roast-fire"},
		"called a roast":               {true, "70 to 500 °F", "roast at malt 185 °C for 40 min", "", "roast-fire"},
		"too hot in either":            {true, "70 to 500 °F", "cure at air-on 230 °C for 4 h", "", "roast-fire"},
	} {
		t.Run(name, func(t *testing.T) {
			found := check.File("x.malt", []byte(withCure(t, c.pounds, c.reaches, c.cure)), ".", nowhere{}, check.Options{}).Findings
			rules := map[string]finding.Finding{}
			for _, f := range found {
				rules[f.Rule] = f
				if c.hint == "" {
					assert.NotContains(t, f.Hint, "was meant", f.Rule)
				}
			}
			if c.rule != "" {
				require.Contains(t, rules, c.rule)
			}
			if c.hint != "" {
				assert.Contains(t, rules[c.rule].Hint, c.hint)
				for _, r := range []string{"roast-fire", "roast-wet", "roast-without-quench", "never-stirred", "hot-surfaces"} {
					assert.NotContains(t, rules, r)
				}
			}
		})
	}
}

// A finding says in one scale what it says.
func TestOneFindingIsInOneScale(t *testing.T) {
	t.Parallel()
	for _, cure := range []string{"roast at malt 210 °C for 40 min", "cure at air-on 230 °C for 1 h", "dry at malt 40 °C for 2 h"} {
		for _, f := range check.File("x.malt", []byte(withCure(t, true, "150 to 500 °F", cure)), ".", nowhere{}, check.Options{}).Findings {
			if said := strings.Join([]string{f.Message, f.Why}, " "); strings.Contains(f.Place.Text(), "°C") && !strings.Contains(f.Message, "°F") {
				assert.NotContains(t, said, "°F", f.Rule)
			}
		}
	}
}
