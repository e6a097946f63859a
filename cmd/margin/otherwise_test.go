package margin

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
)

func (e example) asCase() Case { return Case{e.name, e.text, e.dir, e.root} }

// other is what is said of the number that stands behind the words.
func (e example) other(t testing.TB, behind string, steps int) *Otherwise {
	at := strings.Index(string(e.text), behind)
	require.GreaterOrEqual(t, at, 0, behind)
	return OtherwiseAt(t.Context(), e.asCase(), e.tree, e.report, at+len(behind), steps)
}

func TestWhatOneMoreOrLessOfANumberChanges(t *testing.T) {
	e := exampleOf(t, "pale.malt")
	var out strings.Builder
	for _, behind := range []string{"from ", "at most ", "soak ", "water at ", "bed at ", "bed at 14 to ", "every ", "acrospire at least ", "allow ", "moisture at most 25 % allow ", "over ", "cure at air-on ",
		"°C for ", "gate moisture at most ", "malt ", "at least 3 weeks", "total time at most ", "final moisture "} {
		o := e.other(t, behind, Steps)
		if o == nil {
			fmt.Fprintf(&out, "%s: nothing\n", behind)
			continue
		}
		fmt.Fprintf(&out, "%s«%s»\n  %s\n", behind, o.Text, strings.Join(o.Lines(), "\n  "))
	}
	golden.File(t, "testdata/otherwise.txt", out.String())
}

func TestWhatIsNoNumberOfAProcessHasNoOtherwise(t *testing.T) {
	e := exampleOf(t, "pale.malt")
	assert.Nil(t, e.other(t, "process", Steps))
	assert.Nil(t, e.other(t, "use \"lo", Steps))
	assert.Nil(t, e.other(t, "# Loft", Steps))
	broken := exampleWith(t, "pale.malt", strings.Replace(string(e.text), "soak 7 h", "soak 7 h h", 1))
	assert.Nil(t, broken.other(t, "rest ", Steps), "nothing is forecast")
}

func TestWhatTakesTooManyStepsIsLeftToWhoAsksForIt(t *testing.T) {
	e := exampleOf(t, "pale.malt")
	o := e.other(t, "soak ", 1000)
	require.NotNil(t, o)
	assert.True(t, o.Dear)
	assert.Empty(t, o.Sides)
}

func TestTheStepOfANumberIsOneOrADigitLess(t *testing.T) {
	for _, c := range []struct {
		number, unit string
		step         float64
		more         string
	}{
		{"7", "h", 1, "8"}, {"13", "°C", 1, "14"}, {"0", "°C", 1, "1"}, {"10", "%", 1, "11"}, {"4.5", "%", 1, "5.5"}, {"250", "%", 1, "251"}, {"6", "kg", 1, "7"}, {"1250", "kg", 100, "1350"},
		{"1.2", "m2", 0.1, "1.3"}, {"0.5", "h", 0.1, "0.6"}, {"3/4", "", 0.1, "0.85"}, {"240", "m3/h", 10, "250"}, {"60", "min", 1, "61"}, {"0.92", "", 0.1, "1.02"}, {"3", "times", 1, "4"},
	} {
		n := number{text: c.number, unit: c.unit}
		v, ok := n.value()
		require.True(t, ok)
		assert.InDelta(t, c.step, n.step(v), 1e-9, "%s %s", c.number, c.unit)
		assert.Equal(t, c.more, n.moved(v, n.step(v)), "%s %s", c.number, c.unit)
	}
}
