package syntax

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/quantity"
	"maltwright/lang/source/golden"
	"maltwright/lang/vocabulary"
)

const grammarPage = "../../docs/grammar.ebnf"

// The page is testdata/grammar.ebnf, written by hand, with the grammar of a header
// and the clause words put in from the program.
func TestGrammarPageIsTheGrammarThatIsRead(t *testing.T) {
	template, err := os.ReadFile("testdata/grammar.ebnf")
	require.NoError(t, err)
	page := strings.NewReplacer(
		"(* HEADER *)\n", grammar.String()+"\n",
		"(* CLAUSES *)", `"`+strings.Join(vocabulary.ClauseWords(), `" | "`)+`"`,
	).Replace(string(template))
	golden.File(t, grammarPage, page)
}

func TestGrammarPageDefinesEveryTokenItUses(t *testing.T) {
	template, err := os.ReadFile("testdata/grammar.ebnf")
	require.NoError(t, err)
	for name := range kindNames {
		token := strings.ToLower(name)
		assert.Regexp(t, `(?m)^`+token+`\s+=`, string(template), "%s", token)
	}
}

func TestGrammarPageHasEveryBound(t *testing.T) {
	page, err := os.ReadFile(grammarPage)
	require.NoError(t, err)
	for op := quantity.AtLeast; op <= quantity.Below; op++ {
		for _, word := range append(vocabulary.Signs(op), strings.Fields(op.String())...) {
			assert.Contains(t, string(page), `"`+word+`"`)
		}
	}
}
