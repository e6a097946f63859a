package check

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
)

func TestAcceptSilencesItsRuleInItsBlock(t *testing.T) {
	missed := []string{threeSoaks, shortSteep, "allow 4 to 7 days", twoDays}
	require.Equal(t, []string{"target-missed"}, beside(t, checked(changed(t, missed...)).Findings), "without an acceptance it fires")

	const accept = `accept target-missed because "this lot grows well at 39 %"`
	for _, c := range []struct {
		what, where, with string
		want              []string
	}{
		{"in the block of the steep, whose head is not part of it", threeSoaks, accept + "\n" + shortSteep, nil},
		{"in the whole process", "make pale malt", "make pale malt\n" + accept, nil},
		{"in another stage it silences nothing", "turn  every 8 h", "turn  every 8 h\n" + accept, []string{"target-missed", "accept-unused"}},
	} {
		t.Run(c.what, func(t *testing.T) {
			text := changed(t, "allow 4 to 7 days", twoDays, c.where, c.with)
			if c.where != threeSoaks {
				text = changed(t, append(missed, c.where, c.with)...)
			}
			assert.ElementsMatch(t, c.want, beside(t, checked(text).Findings))
		})
	}
}

func TestAcceptOfOneRuleLeavesAnother(t *testing.T) {
	text := changed(t, threeSoaks, "accept oxygen-gone because \"it was stirred by hand\"\n    soak 30 h in water at 19 °C\n")
	assert.Equal(t, []string{"target-missed"}, beside(t, checked(text).Findings))
}

func TestAcceptOfALanguageRuleWorksToo(t *testing.T) {
	text := "vessel \"spare tub\" { holds 18 l }\n" + changed(t)
	require.Equal(t, []string{"unused-definition"}, beside(t, checked(text).Findings))
	// The finding is about the name, which stands in front of the vessel's block but in its statement.
	text = "vessel \"spare tub\" { holds 18 l; accept unused-definition because \"for the autumn\" }\n" + changed(t)
	assert.Empty(t, beside(t, checked(text).Findings))
}

func TestAcceptNeverSilencesADanger(t *testing.T) {
	r := checked(changed(t, "make pale malt", "make pale malt\naccept accept-me because \"we know\""))
	require.Len(t, r.House.Accepts, 1)
	a := r.House.Accepts[0]
	place := a.Scope
	danger := finding.Finding{Place: place, Severity: finding.Danger, Rule: "accept-me", Message: "people can be hurt"}
	fault := finding.Finding{Place: place, Severity: finding.Fault, Rule: "accept-me", Message: "the grain is lost"}
	assert.Equal(t, []string{"accept-me", "accept-unknown"}, names(accepted(r.House, []finding.Finding{danger})))
	assert.Empty(t, accepted(r.House, []finding.Finding{fault}))
}

func TestAcceptThatSilencesNothingIsFound(t *testing.T) {
	text := changed(t, "make pale malt", "make pale malt\naccept gate-not-reached because \"the last tray dries on\"")
	got := checked(text).Findings
	require.Equal(t, []string{"accept-unused"}, beside(t, got))
	assert.Contains(t, got[slices.Index(names(got), "accept-unused")].Message, "gate-not-reached")
}

func TestAcceptOfARuleThatIsNotThereNamesTheNearest(t *testing.T) {
	text := changed(t, "make pale malt", "make pale malt\naccept gate-not-reachd because \"the last tray dries on\"")
	got := checked(text).Findings
	require.Equal(t, []string{"accept-unknown"}, beside(t, got))
	f := got[slices.Index(names(got), "accept-unknown")]
	assert.Equal(t, "did you mean gate-not-reached?", f.Hint)
	require.Len(t, f.Fixes, 1)
	assert.Equal(t, "gate-not-reachd", f.Fixes[0].Place.Text())
	assert.Equal(t, "gate-not-reached", f.Fixes[0].New)
}
