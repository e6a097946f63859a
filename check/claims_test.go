package check

import (
	"os"
	"regexp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
)

// A process that is called another malt than it makes is found out, by one rule or
// another. The process, and what it is wrongly called:
var wrongClaims = map[string][]string{
	"pale":    {"vienna", "munich", "amber", "brown", "caramel", "crystal", "chit", "distilling"},
	"wheat":   {"vienna", "munich", "amber", "brown", "caramel", "chit", "distilling"},
	"oats":    {"vienna", "munich", "amber", "brown", "caramel", "chit", "distilling"},
	"munich":  {"pilsner", "pale", "vienna", "amber", "brown", "caramel", "chit", "distilling", "smoked", "acid"},
	"crystal": {"pilsner", "pale", "vienna", "munich", "amber", "brown", "chit", "distilling", "smoked", "acid"},
	"dryer":   {"pilsner", "pale", "vienna", "munich", "amber", "brown", "caramel", "chit", "smoked", "acid"},
}

var claim = regexp.MustCompile(`make [a-z]+ malt`)

func TestAWrongClaimIsFoundOut(t *testing.T) {
	loft, err := os.ReadFile("../examples/loft.malt")
	require.NoError(t, err)
	for example, claims := range wrongClaims {
		text, err := os.ReadFile("../examples/" + example + ".malt")
		require.NoError(t, err)
		for _, malt := range claims {
			bad := claim.ReplaceAllString(string(text), "make "+malt+" malt")
			found := File("x.malt", []byte(bad), ".", house{"loft.malt": string(loft)}, Options{}).Findings
			assert.True(t, slices.ContainsFunc(found, func(f finding.Finding) bool { return f.Severity >= finding.Caution }),
				"%s called %s: nothing is said", example, malt)
		}
	}
}

// What is plainly a pale malt is judged as one, whatever it is called.
func TestAWrongClaimBuysNoSilence(t *testing.T) {
	loft, err := os.ReadFile("../examples/loft.malt")
	require.NoError(t, err)
	text, err := os.ReadFile("../examples/oven.malt")
	require.NoError(t, err)
	wet := regexp.MustCompile(`dry  at oven 50 °C .*`).ReplaceAllString(string(text), "dry  at oven 80 °C for 3 h")
	for _, malt := range []string{"pale", "caramel", "amber", "brown"} {
		bad := claim.ReplaceAllString(wet, "make "+malt+" malt")
		bad = regexp.MustCompile(`until moisture at most 14 %`).ReplaceAllString(bad, "until moisture at most 22 %")
		found := names(File("x.malt", []byte(bad), ".", house{"loft.malt": string(loft)}, Options{}).Findings)
		assert.Contains(t, found, "hot-while-wet", "called %s", malt)
		if malt != "pale" {
			assert.Contains(t, found, "claim-not-kept", "called %s", malt)
		}
	}
}
