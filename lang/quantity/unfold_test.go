package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What people type for a quantity, and how the language prints it.
func TestWhatPeopleTypeIsReadAndPrintedInOneWay(t *testing.T) {
	for typed, want := range map[string]string{
		".5 kg": "0.5 kg", "-.5 °C": "-0.5 °C", ".50l": "0.50 l", "1 h .5 min": "1 h 0.5 min",
		"½": "1/2", "½ day": "1/2 day", "10½ lb": "10 1/2 lb", "10 ½ lb": "10 1/2 lb", "1½days": "1 1/2 days", "−2⅓ °C": "-2 1/3 °C",
		"¼ l": "1/4 l", "¾": "3/4", "⅔ h": "2/3 h", "2⅜ in": "2 3/8 in", "5 lb 4½ oz": "5 lb 4 1/2 oz", "1 1/2 lb": "1 1/2 lb",
		"62 deg F": "62 °F", "62 degrees F": "62 °F", "62degF": "62 °F", "62 ° F": "62 °F", "62 °f": "62 °F", "62 º F": "62 °F", "1 degree C": "1 °C",
		"9 degrees F/h": "9 °F/h", "9 deg C/min": "9 °C/min",
		"144 sq in": "144 in2", "144 in²": "144 in2", "8 square feet": "8 ft2", "8 sq ft": "8 ft2", "2 cubic feet": "2 ft3", "2 cu ft": "2 ft3", "60 cu ft/min": "60 cfm",
	} {
		q, err := Parse(typed)
		if assert.NoError(t, err, typed) {
			assert.Equal(t, want, q.String(), typed)
			again, err := Parse(want)
			assert.NoError(t, err, want)
			assert.Equal(t, again.SI, q.SI, typed)
		}
	}
}

func TestASquareInchIsAnInchEachWay(t *testing.T) {
	q, err := Parse("144 sq in")
	assert.NoError(t, err)
	assert.InEpsilon(t, mustParse(t, "1 ft2").SI, q.SI, 1e-15)
}

func TestSpellChangesNothingThatIsNoNumber(t *testing.T) {
	for _, text := range []string{"", "x", "1.5½", "½½", "1½2", ".", ".x", "..5", "1/2½", "1 2½"} {
		assert.Equal(t, text, Spell(text))
	}
}
