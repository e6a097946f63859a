package journal_test

import (
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/journal"
	"maltwright/lang/read"
)

const began = `use "pale.malt"

batch "26-10" of "Loft pale" {
  began 2026-03-06 07:00
}
`

var noon = time.Date(2026, 3, 6, 14, 5, 0, 0, time.Local)

// entered puts a reading into a record of the examples.
func entered(t *testing.T, text string, x journal.Reading) (journal.Entry, error) {
	t.Helper()
	root, err := read.OpenRoot("../../examples/batches")
	require.NoError(t, err)
	t.Cleanup(func() { root.Close() })
	return journal.Record{Name: "new.malt", Text: []byte(text), Reader: root, Dir: "."}.With(x, noon)
}

func TestAReadingIsALineMoreAndNothingElse(t *testing.T) {
	e, err := entered(t, began, journal.Reading{Words: strings.Fields("weighed 7.1 kg after soak 1")})
	require.NoError(t, err)
	assert.Equal(t, "26-10", e.Batch)
	assert.Equal(t, strings.Replace(began, "}\n", "\n  weighed 7.1 kg at 2026-03-06 14:05 after soak 1\n}\n", 1), string(e.Text))
	assert.Contains(t, e.Words(), "weighed 7.1 kg at 2026-03-06 14:05")
	doubts, err := e.Judge(t.Context())
	require.NoError(t, err)
	assert.Empty(t, doubts)
}

func TestWhatCannotBeIsRefused(t *testing.T) {
	for words, want := range map[string]string{
		"weighed 71 kg after soak 1": "not noted", "weighed 7.1 bushels": "not noted", "weighed 7.1 kg at 2031-03-06 14:00": "ahead of this computer's clock",
	} {
		_, err := entered(t, began, journal.Reading{Words: strings.Fields(words)})
		var refusal journal.Refusal
		require.ErrorAs(t, err, &refusal, words)
		assert.Contains(t, err.Error(), want)
	}
	var misuse journal.Misuse
	_, err := entered(t, began, journal.Reading{Words: []string{"wieghed 7.1 kg"}})
	require.ErrorAs(t, err, &misuse)
	assert.Contains(t, err.Error(), "weighed")
	text, err := os.ReadFile("../../examples/batches/loft.malt")
	require.NoError(t, err)
	_, err = entered(t, string(text), journal.Reading{Words: []string{"turned"}})
	require.ErrorAs(t, err, &misuse)
}

func TestWhatIsDoubtfulIsListed(t *testing.T) {
	e, err := entered(t, began, journal.Reading{Words: strings.Fields("weighed 9.4 kg after soak 1")})
	require.NoError(t, err)
	doubts, err := e.Judge(t.Context())
	require.NoError(t, err)
	assert.NotEmpty(t, doubts)
}
