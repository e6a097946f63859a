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
		"03/04/2026 07:00": {"2026-04-03", "2026-03-04"},
		"3.4.26 07:00":     {"2026-04-03", "2026-03-04"},
		"28 Dec 07:00":     {"2025-12-28"},
		"2 Jan 07:00":      {"2026-01-02"},
		"2/1 07:00":        {"2026-01-02", "2026-02-01"},
		"2026-01-02 7":     {"07:00", "19:00"},
		"2026-01-02 19":    {"19:00"},
		"7 o'clock":        {"07:00", "19:00"},
		"19 h":             {"19:00"},
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
