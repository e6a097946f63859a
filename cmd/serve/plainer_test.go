package serve

import (
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A refusal speaks of the form, and of no text that stands nowhere on the page.
func TestARefusalSpeaksOfTheForm(t *testing.T) {
	s, batch := growing(t)
	for _, c := range []struct {
		form      []string
		says, not string
	}{
		{[]string{"kind", "weighed", "value", "0.4", "unit", "kg", "in", "blue tub", "after", "soak 1"}, "choose “the grain alone”", "take in"},
		{[]string{"kind", "weighed", "value", "14.9.5", "unit", "kg"}, "is not a number: type digits", "say in words"},
		{[]string{"kind", "weighed", "value", "1,250", "unit", "kg"}, "type 1.250 or 1250", "a record has"},
		{[]string{"kind", "chit", "value", "8o", "of", "1.0.0"}, "is not a number", "["},
		{[]string{"kind", "weighed", "value", "910", "unit", "kg"}, "910 kg", "["},
	} {
		a := s.post(batch+"/reading", c.form...)
		assert.Equal(t, http.StatusUnprocessableEntity, a.status, "%v: %s", c.form, plain(a.body))
		text := plain(a.body)
		assert.Contains(t, text, c.says)
		assert.NotContains(t, text, c.not)
	}
}
