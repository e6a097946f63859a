package margin

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source"
)

// titlesAt are the titles of what may be done at the first such words of a file.
func (e example) titlesAt(t testing.TB, words string) (list []string) {
	at := strings.Index(string(e.text), words)
	require.GreaterOrEqual(t, at, 0, words)
	for _, x := range Actions(t.Context(), e.asCase(), e.tree, e.report, source.Span{Start: at, End: at}) {
		list = append(list, x.Title)
	}
	return list
}

// altered is the example with other words.
func altered(t testing.TB, old, new string) example {
	return exampleWith(t, "pale.malt", strings.Replace(string(exampleOf(t, "pale.malt").text), old, new, 1))
}

func TestADegreeThatWasMeantIsOffered(t *testing.T) {
	assert.Contains(t, altered(t, "cure at air-on 82 °C", "cure at air-on 82 °F").titlesAt(t, "82 °F"), "write 82 °C")
}

func TestAValueOfAnotherKindThanIsWantedIsNotConverted(t *testing.T) {
	assert.Contains(t, strings.Join(altered(t, "soak 7 h", "soak 8 h").titlesAt(t, "8 h in"), "\n"), "convert to 480 min")
	assert.NotContains(t, strings.Join(altered(t, "soak 7 h", "soak 7 kg").titlesAt(t, "7 kg"), "\n"), "convert")
}

func TestAFindingThatSaysTheSameInOtherWordsIsToldOnce(t *testing.T) {
	o := altered(t, "water at 13 °C", "water at 30 °C").other(t, "water at ", Steps)
	require.NotNil(t, o)
	require.NotEmpty(t, o.Sides)
	t.Log(o.Lines())
	assert.NotContains(t, o.Sides[0].Says, "a caution goes: the piece gets 30 °C")
	for _, s := range o.Sides {
		assert.LessOrEqual(t, strings.Count(s.Says, "the piece gets"), 1, s.Says)
	}
}
