package reference_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/reference"
	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// used is what the card takes from another file: what has its name is left out there.
const used = "vessel \"tub 2\" { holds 20 l }\n"

type other struct{}

func (other) Read(path string) ([]byte, error) {
	if path != "loft.malt" {
		return nil, fmt.Errorf("%s is not used", path)
	}
	return []byte(used), nil
}

// code is the card as a file of the language.
func code() string {
	var b strings.Builder
	for _, p := range reference.Card() {
		for _, l := range p.Lines {
			if l.Code != "" {
				b.WriteString(l.Code + "\n")
			}
		}
	}
	return b.String()
}

func TestTheCardIsAFileThatReads(t *testing.T) {
	_, found := read.Load("card.malt", []byte(code()), ".", other{})
	for _, f := range found {
		assert.Less(t, f.Severity, finding.Fault, "%s: %s (%s)\n%s", f.Rule, f.Message, f.Hint, code())
	}
}

// words are all words of the card, as a reader sees them.
func words() []string {
	var b strings.Builder
	for _, p := range reference.Card() {
		for _, l := range p.Lines {
			b.WriteString(l.Code + " " + l.Note + " ")
		}
	}
	return strings.FieldsFunc(b.String(), func(r rune) bool {
		return unicode.IsSpace(r) || strings.ContainsRune(`,;:|{}"()`, r)
	})
}

// TestEveryStatementStandsOnTheCard asks of every row of the vocabulary for a statement of
// it in one of its blocks, and of every clause that it takes.
func TestEveryStatementStandsOnTheCard(t *testing.T) {
	tree, _ := syntax.Parse(source.New("card.malt", []byte(code())))
	stands := map[vocabulary.Key]bool{}
	var walk func(in vocabulary.Block, list []*syntax.Statement)
	walk = func(in vocabulary.Block, list []*syntax.Statement) {
		for _, s := range list {
			stands[vocabulary.Key{In: in, Word: s.Verb.Text}] = true
			if row, ok := vocabulary.Lookup(in, s.Verb.Text); ok && s.Body != nil {
				walk(row.Opens, s.Body.Statements)
			}
		}
	}
	walk(vocabulary.File, tree.Top.Statements)
	all := words()
	for _, row := range vocabulary.Rows() {
		if !slices.ContainsFunc(row.In, func(in vocabulary.Block) bool { return stands[vocabulary.Key{In: in, Word: row.Word}] }) {
			assert.Contains(t, said, row.Word, "%s stands nowhere in %v", row.Word, row.In)
			assert.Contains(t, all, row.Word)
		}
		for _, c := range row.Clauses {
			assert.Contains(t, all, c.Word, "%s of %s", c.Word, row.Word)
		}
	}
}

// said are statements that the card shows in another block only: a line that is written the
// same there, and so once for both.
var said = []string{"air", "for", "until", "allow", "tare"}

// TestEveryWordOfTheVocabularyStandsOnTheCard is about choices, places, bounds, measures,
// limits and units.
func TestEveryWordOfTheVocabularyStandsOnTheCard(t *testing.T) {
	var want []string
	slot := func(s vocabulary.Slot) { want = append(append(want, s.Words...), s.Places...) }
	for _, row := range vocabulary.Rows() {
		for _, s := range row.Slots {
			slot(s)
		}
		for _, c := range row.Clauses {
			for _, s := range c.Slots {
				slot(s)
			}
		}
	}
	for _, m := range vocabulary.Measures() {
		want = append(append(want, strings.Fields(m.Word)...), m.Words...)
	}
	for _, l := range vocabulary.LimitNames() {
		want = append(want, l.Word)
	}
	for _, a := range vocabulary.Analyses() {
		want = append(want, a.Word)
	}
	for _, u := range quantity.Units() {
		want = append(want, strings.Fields(u.Name)...)
	}
	all := words()
	for i, w := range all {
		all[i] = strings.Trim(w, ".")
	}
	slices.Sort(want)
	require.Greater(t, len(want), 100)
	for _, w := range slices.Compact(want) {
		assert.Contains(t, all, w)
	}
}
