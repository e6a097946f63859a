package syntax

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Plain degrees are those of the other temperatures of the file, if these are of one kind.
func TestPlainDegreesAreThoseOfTheFile(t *testing.T) {
	for text, want := range map[string]string{
		"a 62 degrees; b 60 °F":                          "°F",
		"a 62 deg\nb at 9 to 12 F":                       "°F",
		"a 62 degrees; b at least 9 °F/h":                "°F",
		"a { b until malt at least 62 degrees; c 9 °C }": "°C",
		"a 62 degrees; b 60 °F; c 9 °C":                  "degrees",
		"a 62 degrees; b 60 K; c 8 h":                    "degrees",
		"a 62 degrees # 60 °F":                           "degrees",
		"a 62 degrees \"60 °F\"":                         "degrees",
		"a 62 °; b 60 °F":                                "°",
	} {
		tree, found := parse(text)
		assert.Empty(t, found, text)
		s := tree.Top.Statements[0]
		var amount Term
		switch {
		case s.Body != nil:
			amount = s.Body.Statements[0].Clauses[0].Terms[1].(Bounded).Value
		default:
			amount = s.Terms[0]
		}
		assert.Equal(t, want, amount.(Amount).Low.Parts[0].Unit.Text, text)
	}
}
