package syntax

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
)

const grammarPage = "../../docs/grammar.ebnf"

// The page is testdata/grammar.ebnf, written by hand, with the grammar of a header
// and the clause words put in from the program.
func TestGrammarPageIsTheGrammarThatIsRead(t *testing.T) {
	template, err := os.ReadFile("testdata/grammar.ebnf")
	require.NoError(t, err)
	clauses := Clauses()
	slices.Sort(clauses)
	page := strings.NewReplacer(
		"(* HEADER *)\n", EBNF()+"\n",
		"(* CLAUSES *)", `"`+strings.Join(clauses, `" | "`)+`"`,
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
