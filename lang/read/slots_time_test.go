package read

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/source/golden"
)

// Each offer for a date or a time of day that may be of several is read when it stands in its place.
func TestOffersOfTimesRead(t *testing.T) {
	const record = "grain \"g\" { species barley }\nvessel \"v\" { holds 25 l }\nfloor \"t\" { area 0.8 m2 }\nprocess \"p\" { make green malt; from 6 kg of \"g\"; steep in \"v\" { soak 7 h in water at 13 °C }; germinate on \"t\" { hold bed at 14 to 17 °C; for 5 days } }\nbatch \"1\" of \"p\" {\n  began 2025-12-27 07:00\n  turned at %s\n}\n"
	for written, want := range map[string][]string{
		"03/04/2026 07:00":     {"2026-04-03", "2026-03-04"},
		"3.4.26 07:00":         {"2026-04-03", "2026-03-04"},
		"28 Dec 07:00":         {"2025-12-28"},
		"2 Jan 07:00":          {"2026-01-02"},
		"2/1 07:00":            {"2026-01-02", "2026-02-01"},
		"2026-01-02 7":         {"07:00", "19:00"},
		"2026-01-02 19":        {"19:00"},
		"7 o'clock":            {"07:00", "19:00"},
		"19 h":                 {"19:00"},
		"\"2026-01-02 07:00\"": {"2026-01-02 07:00"},
	} {
		text := fmt.Sprintf(record, written)
		_, found := load(text)
		at := slices.IndexFunc(found, func(f finding.Finding) bool { return len(f.Offers)+len(f.Fixes) > 0 })
		require.GreaterOrEqual(t, at, 0, "%s: %s", written, golden.Findings(found))
		var says []string
		offers := found[at].Offers
		if fixes := found[at].Fixes; len(fixes) > 0 {
			offers = []finding.Offer{{Says: fixes[0].New, Edits: fixes}}
		}
		for _, o := range offers {
			says = append(says, o.Says)
			e := o.Edits[0]
			_, found := load(text[:e.Place.Start] + e.New + text[e.Place.End:])
			assert.Empty(t, found, "%s: %s", written, o.Says)
		}
		assert.Equal(t, want, says, written)
	}
}

func TestOffersOfSpansOfDaysRead(t *testing.T) {
	for written, want := range map[string][]string{
		"03.04.2026 to 06.04.2026":  {"2026-04-03 to 2026-04-06", "2026-03-04 to 2026-06-04"},
		"April 3 to April 6 2026":   {"2026-04-03 to 2026-04-06"},
		"13.04.2026 to 16/04/2026":  nil,
		"03/04/2026 to 16/04/2026":  {"2026-04-03 to 2026-04-16", "2026-03-04 to 2026-04-16"},
		"30 Dec 2026 to 2027-01-02": nil,
	} {
		text := "site \"s\" { away %s }\n"
		_, found := load(fmt.Sprintf(text, written))
		if want == nil {
			assert.Empty(t, found, written)
			continue
		}
		require.Len(t, found, 1, written)
		var says []string
		for _, o := range found[0].Offers {
			says = append(says, o.Says)
			_, after := load(fmt.Sprintf(text, o.Says))
			assert.Empty(t, after, o.Says)
		}
		assert.Equal(t, want, says, written)
	}
}

// A record goes by the clock on the wall: what names an offset is offered as that showed it.
func TestATimeWithAnOffsetIsTold(t *testing.T) {
	_, found := load("batch \"1\" of \"p\" {\n  began 2026-01-02T07:00Z\n  turned at 08:00\n  turned at 09:00\n}\n")
	at := slices.IndexFunc(found, func(f finding.Finding) bool { return f.Rule == badTime.Name })
	require.GreaterOrEqual(t, at, 0, golden.Findings(found))
	assert.Contains(t, found[at].Message, "names an offset")
	assert.False(t, has(found, valueNeeded.Name), "the times that go by it are not told too")
}
