package layout

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
)

// The ends of ranges: with a unit, without one, of several parts, of several kinds,
// and such as do not read.
var (
	lowEnds  = []string{"4", "-4", "4.50", "1 1/3", "3/4", "1 day", "4 h", "4hours", "1 h 30 min", "90 min", "12 %", "12 % wet basis", "12 % dry basis", "5 lb", "5 lb 4 oz", "2 kg", "60 °F", "12 °C", "4 dayz", "1 1/3 dayz", "4,5", "3 kernels", "1 1/3 K/h", "-4 °C"}
	highEnds = []string{"8", "2 1/3", "1/2", "8 days", "1 day", "2 h", "1 h 45 min", "14 %", "14 %  dry basis", "14 % w.b.", "6 lb", "6 lb 4 oz", "3 kg", "70F", "14 °C", "8 dayz", "2 1/3 dayz", "8,5 h", "1 1/3 kernels", "2 1/3 K/h"}
)

// meant is what a range means: its ends in SI, or their words where they do not read.
func meant(t *testing.T, a syntax.Amount) string {
	require.NotNil(t, a.High)
	out := ""
	for _, q := range []syntax.Quantity{a.LowEnd(), *a.High} {
		parts, words := []quantity.Part{}, ""
		for _, p := range q.Parts {
			parts = append(parts, quantity.Part{Number: p.Number.Text, Unit: p.Unit.Text})
			unit := p.Unit.Text
			if u, ok := quantity.Lookup(unit); ok {
				unit = u.Name
			}
			words += p.Number.Text + "|" + unit + "+"
		}
		if made, err := quantity.Make(parts...); err == nil {
			words = fmt.Sprintf("%d:%.9g", made.Dimension, made.SI)
		}
		out += words + ".."
	}
	return out
}

func rangeIn(t *testing.T, text string) syntax.Amount {
	tree, ok := parse([]byte(text))
	require.True(t, ok, text)
	a, ok := tree.Top.Statements[0].Terms[0].(syntax.Amount)
	require.True(t, ok, text)
	return a
}

func TestARangeMeansTheSameHoweverItsUnitsAreWritten(t *testing.T) {
	said := map[string]string{} // the plain text of each meaning
	for _, low := range lowEnds {
		for _, high := range highEnds {
			text := "allow " + low + " to " + high + "\n"
			tree, ok := parse([]byte(text))
			require.True(t, ok, text)
			want := meant(t, rangeIn(t, text))
			laid := string(Write(tree))
			assert.Equal(t, want, meant(t, rangeIn(t, laid)), "%q is laid out as %q", text, laid)
			plain := string(Plain(tree))
			for other, of := range said {
				assert.Equal(t, of == want, other == plain, "%q is %q, which says %s, and %q says %s", text, plain, want, other, of)
			}
			said[plain] = want
		}
	}
}
