package read

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/finding"
	"maltwright/lang/source/golden"
)

// A statement that begins with a value is told with its word, and with every value.
func TestAStatementThatBeginsWithAValueIsToldWithItsWord(t *testing.T) {
	for text, want := range map[string]string{
		`process "p" { 6 kg of "Far field" }`:                                      "write from 6 kg of \"Far field\"",
		`process "p" { steep { 7 h soak in water at 13 °C } }`:                     "write soak 7 h in water at 13 °C",
		`process "p" { germinate on "tray" { 4 to 7 days } }`:                      "write allow 4 to 7 days",
		`batch "b" of "p" { began 2026-03-06 07:00; 14:00 turned by "AK" }`:        "write turned at 14:00 by \"AK\"",
		`batch "b" of "p" { began 2026-03-06 07:00; "sweet" at 2026-03-07 08:00 }`: "write remark \"sweet\" at 2026-03-07 08:00",
	} {
		_, found := load(text)
		i := slices.IndexFunc(found, func(f finding.Finding) bool { return f.Rule == "verb-missing" })
		if assert.GreaterOrEqual(t, i, 0, golden.Findings(found)) {
			assert.Equal(t, want, found[i].Hint, text)
			assert.Len(t, found[i].Offers, 1, text)
		}
	}
}
