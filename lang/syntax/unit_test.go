package syntax

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/quantity"
)

// What the table of units can read, the lexer must give it in one piece.
func TestEverySpellingOfAUnitIsOneQuantity(t *testing.T) {
	for _, u := range quantity.Units() {
		for _, spelling := range append([]string{u.Name}, u.Aliases...) {
			for _, text := range []string{"8 " + spelling, "8" + spelling, "8 to 9 " + spelling} {
				tree, found := parse("verb " + text + " until x")
				assert.Empty(t, found, text)
				s := tree.Top.Statements[0]
				if assert.Len(t, s.Terms, 1, text) {
					q := s.Terms[0].(Amount)
					last := q.Low
					if q.High != nil {
						last = *q.High
					}
					assert.Equal(t, spelling, last.Parts[len(last.Parts)-1].Unit.Text, text)
				}
			}
		}
	}
}
