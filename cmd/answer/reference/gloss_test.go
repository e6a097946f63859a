package reference_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/reference"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// Whatever word a file can hold is explained.
func TestEveryWordOfTheLanguageIsExplained(t *testing.T) {
	explained := func(word, of string) {
		list := reference.Of(word)
		if assert.NotEmpty(t, list, "%q of %s", word, of) {
			assert.NotEmpty(t, list[0].Doc, word)
		}
	}
	slots := func(list []vocabulary.Slot, of string) {
		for _, s := range list {
			for _, w := range append(s.Words, s.Places...) {
				explained(w, of)
			}
		}
	}
	for _, r := range vocabulary.Rows() {
		explained(r.Word, "file")
		slots(r.Slots, r.Word)
		for _, c := range r.Clauses {
			explained(c.Word, r.Word)
			slots(c.Slots, r.Word)
		}
	}
	for _, m := range vocabulary.Measures() {
		explained(m.Word, "conditions")
		for _, w := range m.Words {
			explained(w, m.Word)
		}
	}
	for _, op := range []quantity.Op{quantity.AtLeast, quantity.AtMost, quantity.Is, quantity.Above, quantity.Below} {
		explained(op.String(), "bounds")
	}
	for _, u := range quantity.Units() {
		if !strings.ContainsAny(u.Name, "%°") && u.Name != "" {
			explained(u.Name, "units")
		}
	}
}

// The glossary has each word once, and says of each what it is or how it looks; a word that
// is no part of the language is one of the trade.
func TestTheGlossaryIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, g := range vocabulary.Glossary() {
		assert.False(t, seen[g.Word], "%q stands twice", g.Word)
		seen[g.Word] = true
		assert.True(t, g.Doc != "" || g.Looks != "", g.Word)
		for _, l := range g.Drawing {
			assert.LessOrEqual(t, utf8.RuneCountInString(l), 34, "%q: fits a screen of 40 columns", l)
		}
		require.NotEmpty(t, reference.Of(g.Word), g.Word)
	}
}

func TestAnOlderWordAndAnotherWordAreExplainedAsThatOfToday(t *testing.T) {
	require.NotEmpty(t, reference.Of("corn-weight"))
	assert.Equal(t, "kernel-weight", reference.Of("corn-weight")[0].Name)
	other, ok := reference.Other("Recirculation")
	assert.True(t, ok)
	assert.Equal(t, "returns", other)
	_, ok = reference.Other("nothing-of-the-kind")
	assert.False(t, ok)
}

func TestAWordOfAMeasureSaysHowItFeels(t *testing.T) {
	list := reference.Of("acrospire")
	require.NotEmpty(t, list)
	assert.Equal(t, reference.Measure, list[0].Kind)
	assert.NotEmpty(t, list[0].Looks)
	assert.NotEmpty(t, list[0].Drawing)
	oven := reference.Of("oven")
	require.NotEmpty(t, oven)
	assert.Equal(t, reference.Part, oven[0].Kind)
	assert.Contains(t, oven[0].In, "cure")
}

// Words of the trade are explained as what they are in it, in any letters.
func TestWordsOfTheTradeAreExplained(t *testing.T) {
	for _, word := range []string{"DMS", "DON", "CO2", "alpha", "dormancy", "Dormancy", "water sensitivity", "endosperm", "mealy", "glassy", "husk", "kernel", "overgrown", "bushy", "overshot", "casting", "germ"} {
		assert.NotEmpty(t, reference.Of(word), word)
	}
	cast := reference.Of("cast")
	require.Len(t, cast, 1)
	assert.Contains(t, cast[0].Doc, "empty the steep")
	meant, ok := reference.Other("cast")
	assert.False(t, ok, "to cast is no withering: %s", meant)
}

// What is seen on the grain stands before the factor of a house.
func TestTheSproutIsExplainedFirst(t *testing.T) {
	list := reference.Of("chit")
	require.Len(t, list, 2)
	assert.Equal(t, reference.Measure, list[0].Kind)
	assert.NotEmpty(t, list[0].Drawing)
	assert.Equal(t, reference.Word, list[1].Kind)
}
