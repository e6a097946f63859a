package rules_test

import (
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/check/rules"
	"maltwright/lang/finding"
	"maltwright/lang/source/golden"
)

// asked is how the examples of a rule are checked, where it is more than usual.
var asked = map[string]check.Options{
	"expectation-at-risk":  {Odds: true, Members: fewBatches},
	"germination-test-old": {On: "2026-03-06"},
}

// fewBatches are enough to tell a promise that is often broken from one that never is.
const fewBatches = 40

// noted is what a good example rightly leaves to be noted, by another rule.
var noted = map[string][]string{
	"never-stirred": {"hot-surfaces"}, // who stirs a roast has hands in the hot kiln
	"roast-wet":     {"hot-surfaces"},
	"quench-odd":    {"hot-surfaces", "roast-fire", "quench-steam"},
	"drum-too-full": {"hot-surfaces", "roast-fire"},
}

// What explain and the pages show is run: in the base the bad example raises its
// rule, and the good one leaves nothing to find and the rule judged.
func TestEachRulesExamplesShowIt(t *testing.T) {
	t.Parallel()
	text, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	base := string(text)
	for _, r := range rules.All() {
		t.Run(r.Name, func(t *testing.T) {
			t.Parallel()
			bad := check.File("bad.malt", []byte(fitted(t, base, r.Bad)), ".", nowhere{}, asked[r.Name])
			assert.Contains(t, rulesOf(bad), r.Name, "the bad example does not show it: it finds\n%s", golden.Lines(bad.Findings))
			good := check.File("good.malt", []byte(fitted(t, base, r.Good)), ".", nowhere{}, asked[r.Name])
			for _, also := range noted[r.Name] {
				assert.Contains(t, rulesOf(good), also, "it is listed as noted")
			}
			good.Findings = slices.DeleteFunc(good.Findings, func(f finding.Finding) bool { return slices.Contains(noted[r.Name], f.Rule) })
			assert.Empty(t, golden.Lines(good.Findings), "the good example")
			for _, u := range good.NotJudged {
				assert.NotContains(t, []string{r.Name, "forecast"}, u.Rule, "the good example is not judged: %s", u.Reason)
			}
		})
	}
}

func rulesOf(r check.Report) []string {
	var list []string
	for _, f := range r.Findings {
		list = append(list, f.Rule)
	}
	return list
}
