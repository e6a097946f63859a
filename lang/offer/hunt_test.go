package offer_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/offer"
)

// Whatever a text is, each place in it gets an answer that fits into its line.
func TestAnyTextGetsAnAnswer(t *testing.T) {
	k := ofLoft(t)
	rnd := rand.New(rand.NewPCG(1, 2))
	signs := []string{"{", "}", "\"", "#", ";", "\n", " ", "\r\n", "\t", "°", "é", "🌾", "\xff", "\x00", "at", "to", "and", "at least", "7", "7 h", "%", "-", "soak", "until", ">=", "\ufeff", "“", "2026-03", "12:", "in"}
	texts := []string{read(t, "../../examples/pale.malt"), read(t, "../../examples/loft.malt"), read(t, "../../examples/batches/26-03.malt")[:1500]}
	for range 400 {
		text := texts[rnd.IntN(len(texts))]
		for range 1 + rnd.IntN(6) {
			at := rnd.IntN(len(text) + 1)
			cut := min(len(text), at+rnd.IntN(12)*rnd.IntN(2))
			text = text[:at] + signs[rnd.IntN(len(signs))] + text[cut:]
		}
		tree := parsed("x.malt", text)
		for range 25 {
			offset := rnd.IntN(len(text)+3) - 1
			for _, it := range offer.At(tree.File, tree, offset, k) {
				require.True(t, 0 <= it.Edit.Start && it.Edit.Start <= it.Edit.End && it.Edit.End <= len(text), "%q", text)
				require.NotContains(t, text[it.Edit.Start:it.Edit.End], "\n", "%q", text)
				require.True(t, it.Edit.Start <= max(offset, 0) && (offset <= it.Edit.End || offset > len(text)), "%d of %q", offset, text)
				require.NotEmpty(t, it.Label)
				require.NotEmpty(t, it.Filter)
			}
			if m, ok := offer.MeaningAt(tree.File, tree, offset, k); ok {
				require.True(t, 0 <= m.Start && m.Start < m.End && m.End <= len(text), "%q", text)
				require.NotEmpty(t, m.Title)
			}
		}
	}
}

// Everything that does not need the broken statement goes on: what is offered elsewhere, and what is
// known of a house of which a line does not read.
func TestABrokenStatementIsNoMatterElsewhere(t *testing.T) {
	house := read(t, "../../examples/loft.malt")
	whole := offer.NamesIn(parsed("loft.malt", house))
	broken := offer.NamesIn(parsed("loft.malt", strings.Replace(house, "holds 25 l;", "holds 25 of of;", 1)))
	require.Equal(t, len(whole), len(broken))
	for i := range whole {
		require.Equal(t, whole[i].Text, broken[i].Text)
	}
	process := read(t, "../../examples/pale.malt")
	at := strings.Index(process, "cure at air-on") + len("cure ")
	want := labels(process, at, ofLoft(t))
	for _, line := range []string{"soak 7 h in water at 13 °C", "hold  bed at 14 to 17 °C", "germinate on \"growing tray\" {", "from 6 kg of \"Far field 2026\""} {
		for _, with := range []string{"§§", "soak soak at at", "at least", "\"", "7 7 7"} {
			brace := ""
			if strings.HasSuffix(line, "{") {
				brace = " {"
			}
			text := strings.Replace(process, line, with+brace, 1)
			require.Equal(t, want, labels(text, strings.Index(text, "cure at air-on")+len("cure "), ofLoft(t)), "%s: %s", line, with)
		}
	}
}

func labels(text string, at int, k offer.Known) (list []string) {
	tree := parsed("x.malt", text)
	for _, it := range offer.At(tree.File, tree, at, k) {
		list = append(list, it.Label)
	}
	return list
}

// long is a file of 300 lines with a statement that is half written near its end.
func long(t testing.TB) (text string, at int) {
	t.Helper()
	for strings.Count(text, "\n") < 300 {
		text += strings.Replace(pale, "Loft pale", strings.Repeat("x", len(text)/1000+1), 1)
	}
	at = strings.LastIndex(text, "at 13 °C") + len("at ")
	return text[:at] + text[at+len("13 °C"):], at
}

const pale = `process "Loft pale" {
  make pale malt
  from 6 kg of "Far field 2026"
  at   "Loft, spring"

  steep in "blue tub" to moisture 43 to 45 % {
    repeat at most 3 times until moisture at least 43 % {
      soak 7 h in water at 13 °C
      rest 9 h in air at 14 °C
    }
  }
}
`

func BenchmarkAt(b *testing.B) {
	text, at := long(b)
	tree := parsed("x.malt", text)
	for b.Loop() {
		offer.At(tree.File, tree, at, offer.Known{})
	}
}

func BenchmarkAtStatement(b *testing.B) {
	text, at := long(b)
	at = strings.LastIndex(text[:at], "soak")
	tree := parsed("x.malt", text)
	for b.Loop() {
		offer.At(tree.File, tree, at, offer.Known{})
	}
}

func BenchmarkParseAndAt(b *testing.B) {
	text, at := long(b)
	for b.Loop() {
		tree := parsed("x.malt", text)
		offer.At(tree.File, tree, at, offer.Known{})
	}
}

func BenchmarkMeaning(b *testing.B) {
	text, at := long(b)
	tree := parsed("x.malt", text)
	for b.Loop() {
		offer.MeaningAt(tree.File, tree, at-3, offer.Known{})
	}
}
