package journal_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/journal"
	"maltwright/lang/layout"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

func TestABeginningIsATidyRecord(t *testing.T) {
	b := journal.Beginning{Uses: "pale.malt", Batch: "26-06", Process: "Loft pale", Began: time.Date(2026, 3, 6, 7, 0, 0, 0, time.Local), Print: "3f9a2c71d0e4", Revision: "1a2b3c4"}
	text, err := b.Text()
	require.NoError(t, err)
	assert.Contains(t, string(text), "pinned \"3f9a2c71d0e4\" from \"1a2b3c4\"\n")
	tree, found := syntax.Parse(source.New("x.malt", text))
	require.Empty(t, found)
	assert.Equal(t, string(text), string(layout.Write(tree)))
	assert.Equal(t, []string{"26-06"}, journal.Batches("x.malt", text))

	b.Revision = ""
	text, err = b.Text()
	require.NoError(t, err)
	assert.NotContains(t, string(text), "from")

	b.Uses = "pale \"old\".malt"
	_, err = b.Text()
	var refusal journal.Refusal
	assert.ErrorAs(t, err, &refusal)
}

func TestTheNextBatchHasTheNextNumberOfItsYear(t *testing.T) {
	names := []string{"26-03", "26-11", "25-40", "26-x", "trial"}
	assert.Equal(t, "26-12", journal.Next(names, 2026))
	assert.Equal(t, "27-01", journal.Next(names, 2027))
	assert.Equal(t, "26-100", journal.Next([]string{"26-99"}, 2026))
}

// A shell takes the quotes off.
func TestTextsOfALineGetTheirQuotesAgain(t *testing.T) {
	for want, words := range map[string][]string{
		`remark "smells of cucumber" at 2026-03-06 14:05 by "AK"`:             {"remark", "smells of cucumber", "by", "AK"},
		`remark "smells of cucumber" at 2026-03-06 14:05`:                     {"remark", "smells", "of", "cucumber"},
		`turned at 2026-03-06 14:05 by "AK"`:                                  {"turned", "by", "AK"},
		`tested friability 86 % by "EBC 4.15" at 2026-03-06 14:05`:            {"tested", "friability", "86", "%", "by", "EBC 4.15"},
		`changed soak 3 to 5 h because "left by train"`:                       strings.Fields("changed soak 3 to 5 h because left by train"),
		`changed soak 3 to 5 h because "left for work" by "AK"`:               {"changed", "soak", "3", "to", "5", "h", "because", "left for work", "by", "AK"},
		`weighed 7.1 kg at 2026-03-06 14:05 after soak 1 by "A. K. of Leeds"`: {"weighed", "7.1", "kg", "after", "soak", "1", "by", `"A. K. of Leeds"`},
	} {
		e, err := entered(t, began, journal.Reading{Words: words})
		if assert.NoError(t, err, want) {
			assert.Equal(t, want, strings.Join(strings.Fields(e.Words()), " "))
		}
	}
}
