package check

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/read"
)

func TestAcceptSilencesItsRuleInItsBlock(t *testing.T) {
	const accept = `accept oxygen-gone because "it was stirred by hand"` + "\n"
	long := []string{threeSoaks, longSoak}
	require.Contains(t, names(checked(changed(t, long...)).Findings), "oxygen-gone", "without an acceptance it fires")
	for _, c := range []struct {
		what    string
		changes []string
		silent  bool
	}{
		{"in the block of the steep", []string{threeSoaks, accept + longSoak}, true},
		{"in the whole process", append(long, "make pale malt", "make pale malt\n"+accept), true},
		{"in another stage it silences nothing", append(long, "turn  every 8 h", "turn  every 8 h\n"+accept), false},
	} {
		t.Run(c.what, func(t *testing.T) {
			got := names(checked(changed(t, c.changes...)).Findings)
			assert.Equal(t, c.silent, !slices.Contains(got, "oxygen-gone"))
			assert.Equal(t, !c.silent, slices.Contains(got, "accept-unused"))
		})
	}
}

func TestAcceptOfOneRuleLeavesAnother(t *testing.T) {
	text := changed(t, threeSoaks, longSoak, "make pale malt", "make pale malt\naccept oxygen-gone because \"it was stirred by hand\"\nexpect final moisture at most 1 %")
	got := names(checked(text).Findings)
	assert.NotContains(t, got, "oxygen-gone")
	assert.Contains(t, got, "expectation-broken")
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
	assert.Equal(t, []string{"accept-me", "accept-unknown"}, names(accepted(r.House, []finding.Finding{danger}, nil)))
	assert.Empty(t, accepted(r.House, []finding.Finding{fault}, nil))
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

// Where the record or the forecast is not judged, nobody knows whether the acceptance of
// a rule of them silences something.
func TestAcceptOfWhatIsNotJudgedIsNotUnused(t *testing.T) {
	root, err := read.OpenRoot("../examples/batches")
	require.NoError(t, err)
	defer root.Close()
	text, err := os.ReadFile("../examples/batches/26-03.malt")
	require.NoError(t, err)
	record := strings.Replace(string(text), "8.66 kg", "6.86 kg", 1)
	record = strings.Replace(record, "  began ", "  accept reading-doubtful because \"the scale was wet\"\n  began ", 1)
	faulty := strings.Replace(record, "at 2026-03-08 06:20", "at 2026-03-08 26:20", 1)
	sound := strings.Replace(string(text), "  began ", "  accept reading-doubtful because \"the scale was wet\"\n  began ", 1)
	grows := changed(t, threeSoaks, longSoak, "make pale malt", "make pale malt\naccept oxygen-gone because \"it was stirred by hand\"")
	for _, c := range []struct {
		what   string
		report Report
		unused bool
	}{
		{"a record", File("x.malt", []byte(record), ".", root, Options{}), false},
		{"a record beside a fault", File("x.malt", []byte(faulty), ".", root, Options{}), false},
		{"a record without forecasts", File("x.malt", []byte(record), ".", root, Options{NoForecast: true}), false},
		{"a record of which nothing is doubtful", File("x.malt", []byte(sound), ".", root, Options{}), true},
		{"a process beside a fault", checked(grows + "\nsite \"Mill\" { watter 9 °C }"), false},
	} {
		assert.Equal(t, c.unused, slices.Contains(names(c.report.Findings), "accept-unused"), c.what)
	}
}

// A piece of the house is accepted with its faults once, wherever it is used.
func TestAcceptInTheHouseHoldsInWhatUsesIt(t *testing.T) {
	long := []string{threeSoaks, longSoak}
	accept := func(rule string) string { return "accept " + rule + " because \"it was stirred by hand\"\n" }
	for _, c := range []struct {
		what, rule string
		behind     string
		silent     bool
	}{
		{"the vessel of the steep", "oxygen-gone", "vessel \"blue tub\"    {", true},
		{"the site", "oxygen-gone", "site \"Loft, spring\" {", true},
		{"the floor, on which nothing is steeped", "oxygen-gone", "floor \"growing tray\" {", false},
	} {
		t.Run(c.what, func(t *testing.T) {
			text := changed(t, long...)
			require.Contains(t, names(checked(text).Findings), c.rule, "without an acceptance it fires")
			require.Equal(t, 1, strings.Count(text, c.behind))
			got := names(checked(strings.Replace(text, c.behind, c.behind+" "+accept(c.rule), 1)).Findings)
			assert.Equal(t, c.silent, !slices.Contains(got, c.rule))
			assert.Equal(t, !c.silent, slices.Contains(got, "accept-unused"))
		})
	}
}

// A file of the house is used by processes that stand elsewhere, and each of them needs
// other acceptances.
func TestAcceptInAFileOfTheHouseIsNotUnused(t *testing.T) {
	const accept = "accept oxygen-gone because \"it was stirred by hand\""
	tub := func(rest string) string { return "vessel \"spare tub\" { holds 18 l; " + rest + " }\n" }
	alone := File("house.malt", []byte(tub(accept)), ".", house{}, Options{})
	assert.NotContains(t, names(alone.Findings), "accept-unused")
	used := File("x.malt", []byte("use \"house.malt\"\n"+changed(t)), ".", house{"house.malt": tub(accept)}, Options{})
	assert.NotContains(t, names(used.Findings), "accept-unused")
	here := File("x.malt", []byte(tub(accept)+changed(t)), ".", house{}, Options{})
	assert.Contains(t, names(here.Findings), "accept-unused")
}
