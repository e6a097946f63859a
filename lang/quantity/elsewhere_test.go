package quantity

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestATimeInAnotherLanguageIsNoUnitAndIsPutRight(t *testing.T) {
	for word, unit := range map[string]string{"godz": "h", "godz.": "h", "Std": "h", "Stunden": "h", "heures": "h", "horas": "h", "hod": "h", "hodin": "h",
		"dni": "days", "Tage": "days", "jours": "days", "días": "days", "dny": "days", "tygodnie": "weeks", "Wochen": "weeks", "semaines": "weeks", "týdny": "weeks",
		"minut": "min", "Minuten": "min", "minutos": "min"} {
		_, err := Make(Part{Number: "12", Unit: word})
		bad := (*Error)(nil)
		require.True(t, errors.As(err, &bad), word)
		assert.Equal(t, UnknownUnit, bad.Kind, word)
		assert.Equal(t, []string{unit}, bad.Units, word)
		got, ok := OfTime(word)
		assert.True(t, ok)
		assert.Equal(t, unit, got)
	}
	for _, word := range []string{"h", "foo", "", "kg", "litrów", "mins"} {
		_, ok := OfTime(word)
		assert.False(t, ok, word)
	}
}
