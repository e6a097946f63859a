package check

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/read"
)

// porchBook is a record of the porch and its house as they once were: the slips name their words, and
// the examples change with every figure of the model.
const porchBook = "testdata/porch"

// onThePorch checks the record of a batch that is dried in one kiln and cured in the next,
// with some of its words changed. It gives the rules that speak.
func onThePorch(t *testing.T, pairs ...string) (rules []string) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(porchBook, "26-02.malt"))
	require.NoError(t, err)
	changed := string(text)
	for i := 0; i < len(pairs); i += 2 {
		require.Contains(t, changed, pairs[i])
		before, rest, _ := strings.Cut(changed, pairs[i])
		changed = before + pairs[i+1] + rest
	}
	root, err := read.OpenRoot(porchBook)
	require.NoError(t, err)
	defer root.Close()
	for _, f := range File("26-02.malt", []byte(changed), ".", root, Options{}).Findings {
		rules = append(rules, f.Rule)
	}
	return rules
}

// upTo gives the words that cut a record off behind a line.
func upTo(t *testing.T, line string) (from, to string) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(porchBook, "26-02.malt"))
	require.NoError(t, err)
	i := strings.Index(string(text), line)
	require.GreaterOrEqual(t, i, 0, line)
	end := i + strings.Index(string(text[i:]), "\n") + 1
	return string(text[i:]), string(text[i:end]) + "}\n"
}

func TestARecordOfTwoKilnsIsJudgedOnEach(t *testing.T) {
	assert.Empty(t, onThePorch(t), "as it went")
	from, to := upTo(t, "  weighed 12 lb 7.1 oz in \"fruit dryer\"")
	assert.Empty(t, onThePorch(t, from, to), "malt that goes to the next kiln is not off the kiln")
	from, to = upTo(t, "  weighed 11 lb 2.7 oz in \"kitchen oven\"")
	assert.Equal(t, []string{"malt-not-weighed"}, onThePorch(t, from, to), "here it is")
	assert.Contains(t, onThePorch(t, "air-off 118 °F", "air-off 181 °F"), "reading-doubtful", "no heat of the oven in the dryer")
	assert.Contains(t, onThePorch(t, "oven 179 °F", "oven 119 °F"), "reading-doubtful", "no heat of the dryer in the oven")
	assert.Contains(t, onThePorch(t, "11 lb 6.6 oz in", "14 lb 6.6 oz in"), "reading-doubtful", "too heavy in the oven")
	assert.Contains(t, onThePorch(t, "weighed 11 lb 3.5 oz in \"kitchen oven\"", "weighed 8 lb 3.5 oz in \"kitchen oven\""), "reading-impossible", "without the trays that it names")
}
