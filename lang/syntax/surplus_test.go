package syntax

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source"
)

const braced = `process "p" {
  steep in "tub" {
    soak 7 h in water at 13 °C
  }
  germinate on "tray" {
    hold bed at 14 to 17 °C
  }
  deculm within 12 h
}
`

// One brace too many is one finding, at that brace, and all below it is read where
// it stands.
func TestABraceTooManyIsBlamedAndLeftOut(t *testing.T) {
	for name, c := range map[string]struct{ from, to string }{
		"behind a step":      {"at 13 °C\n", "at 13 °C }\n"},
		"on a line, too far": {"at 13 °C\n", "at 13 °C\n    }\n"},
		"at the margin":      {"  germinate", "}\n  germinate"},
		"in the next block":  {"to 17 °C\n", "to 17 °C }\n"},
	} {
		t.Run(name, func(t *testing.T) {
			text := strings.Replace(braced, c.from, c.to, 1)
			f := source.New("x.malt", []byte(text))
			tree, found := Parse(f)
			require.Len(t, found, 1)
			assert.Equal(t, "stray-brace", found[0].Rule)
			assert.Equal(t, strings.Index(text, c.to)+strings.Index(c.to, "}"), found[0].Place.Start)
			require.Len(t, tree.Top.Statements, 1)
			var verbs []string
			for _, s := range tree.Top.Statements[0].Body.Statements {
				verbs = append(verbs, s.Verb.Text)
			}
			assert.Equal(t, []string{"steep", "germinate", "deculm"}, verbs)
		})
	}
}

func TestABraceBehindTheEndIsBlamedItself(t *testing.T) {
	_, found := Parse(source.New("x.malt", []byte(braced+"}\n")))
	require.Len(t, found, 1)
	assert.Equal(t, len(braced), found[0].Place.Start)
}
