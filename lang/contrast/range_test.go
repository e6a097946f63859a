package contrast

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/layout"
)

// A range says the same with its unit behind one end or both, in whatever unit; and
// what says the same is laid out so, for those who compare lines.
func TestARangeSaysTheSameHoweverItsUnitsAreWritten(t *testing.T) {
	ends := []string{"4", "1 1/3", "1 2/3", "4 h", "26 h", "1 h 30 min", "2 h", "1 day", "26 hours", "1.5 h", "12 %", "14 % dry basis", "5 lb 4 oz", "6 lb", "60 °F", "16 °C", "4 dayz", "9 dayz", "4,5 h", "5F"}
	said := map[string]string{}
	for _, low := range ends {
		for _, high := range ends {
			text := "process \"p\" { germinate on \"f\" { allow " + low + " to " + high + " } }\n"
			assert.Empty(t, told(text, string(layout.Write(tree(text)))), text)
			says, plain := Says(tree(text).Top.Statements[0].Body.Statements[0].Body.Statements[0].Terms), string(layout.Plain(tree(text)))
			for other, of := range said {
				assert.Equal(t, of == says, other == plain, "%s is %s, and %s is %s", plain, says, other, of)
			}
			said[plain] = says
		}
	}
}

func TestTheUnitOfARangeIsNoChangeAndItsEndsAre(t *testing.T) {
	frame := func(allow string) string { return "process \"p\" { germinate on \"f\" { allow " + allow + " } }" }
	for _, c := range []struct {
		old, new string
		same     bool
	}{
		{"4 to 8 days", "4 days to 8 days", true},
		{"4 to 8 days", "4 d to 192 h", true},
		{"4 h to 1 day", "4 to 24 h", true},
		{"1 h 30 min to 2 h", "90 to 120 min", true},
		{"5 lb 4 oz to 6 lb", "84 to 96 oz", true},
		{"4 h to 8 days", "4 to 8 days", false},
		{"4 days to 8", "4 to 8 days", false},
		{"5 to 6 lb 4 oz", "5 lb to 6 lb 4 oz", false},
		{"4 to 8 dayz", "4 dayz to 8 dayz", true},
		{"4 to 8 dayz", "4 to 8 days", false},
	} {
		assert.Equal(t, c.same, told(frame(c.old), frame(c.new)) == "", "%s and %s", c.old, c.new)
	}
}
