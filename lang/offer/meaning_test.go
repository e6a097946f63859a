package offer_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/offer"
	"maltwright/lang/quantity"
	"maltwright/lang/source/golden"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// ofLoft is what is known in the house of the loft, with a figure for the steep water.
func ofLoft(t *testing.T) offer.Known {
	k := offer.Known{Names: offer.NamesIn(parsed("loft.malt", read(t, "../../examples/loft.malt"))), Files: []string{"loft.malt"},
		Rules: []offer.Named{{Text: "dust", Detail: "a dusty work in a closed room"}}}
	k.Usual = func(a offer.Asked) []offer.Usual {
		if a.Verb != vocabulary.VerbSoak || a.Clause != vocabulary.ClauseAt {
			return nil
		}
		low, err := quantity.Parse("12 °C")
		require.NoError(t, err)
		high, err := quantity.Parse("15 °C")
		require.NoError(t, err)
		return []offer.Usual{{Range: quantity.Range{Low: low, High: high}, Why: "12 to 15 °C is usual for the steep water of barley"}}
	}
	return k
}

// cursor takes the ▮ out of a text.
func cursor(t *testing.T, text string) (tree *syntax.Tree, at int) {
	t.Helper()
	at = strings.Index(text, "▮")
	require.GreaterOrEqual(t, at, 0)
	return parsed("main.malt", text[:at]+text[at+len("▮"):]), at
}

func TestOffers(t *testing.T) {
	golden.Archive(t, "testdata/offers.txtar", func(t *testing.T, c golden.Case) string {
		tree, at := cursor(t, c.Files["main.malt"])
		var out strings.Builder
		for _, it := range offer.At(tree.File, tree, at, ofLoft(t)) {
			needed := " "
			if it.Needed {
				needed = "!"
			}
			fmt.Fprintf(&out, "%s %s | %s", needed, it.Label, it.Detail)
			if it.Edit.New != it.Label || it.Edit.Start != it.Edit.End {
				fmt.Fprintf(&out, " | %q for %q", it.Edit.New, tree.File.Text(it.Edit.Span))
			}
			if it.Kind == offer.Value && it.Doc != "" {
				fmt.Fprintf(&out, " | %s", it.Doc)
			}
			out.WriteString("\n")
		}
		return out.String()
	})
}

func TestMeanings(t *testing.T) {
	golden.Archive(t, "testdata/meanings.txtar", func(t *testing.T, c golden.Case) string {
		tree, at := cursor(t, c.Files["main.malt"])
		m, ok := offer.MeaningAt(tree.File, tree, at, ofLoft(t))
		if !ok {
			return "nothing\n"
		}
		out := fmt.Sprintf("%s\n%s\n%s\n", tree.File.Text(m.Span), m.Title, m.Doc)
		for _, f := range m.Facts {
			out += "- " + f + "\n"
		}
		if m.Says != "" {
			out += m.Says + "\n"
		}
		return out + m.Form + "\n"
	})
}

func TestAStepThatARecordNamesIsWhatItsStatementSays(t *testing.T) {
	text := "batch \"1\" of \"x\" {\n  weighed 9 kg after dry 2\n}\n"
	tree := parsed("main.malt", text)
	m, ok := offer.MeaningAt(tree.File, tree, strings.Index(text, "dry 2"), offer.Known{})
	require.True(t, ok)
	row, ok := vocabulary.Lookup(vocabulary.Kiln, "dry")
	require.True(t, ok)
	require.Equal(t, row.Doc, m.Doc)
}
