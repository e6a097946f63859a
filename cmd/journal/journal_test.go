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

// A shell takes the quotes off a name; what is typed without any may be of several words.
func TestNamesAreQuotedAgain(t *testing.T) {
	const house = `use "pale.malt"
scale "old scale" { division 10 g }
vessel "tub at the door" { holds 25 l; weighs 990 g }

batch "26-10" of "Loft pale" {
  began 2026-03-06 07:00
}
`
	for _, words := range [][]string{
		{"weighed", "8.4", "kg", "in", "tub at the door", "on", "old", "scale", "after", "soak", "1"},
		{"weighed", "8.4", "kg", "on", "old scale", "in", "tub at the door", "after", "soak", "1"},
		{`weighed 8.4 kg in "tub at the door" on "old scale" after soak 1`},
		{"weighed", "8.4", "kg", "in", `"tub at the door"`, "on", `"old scale"`, "after", "soak", "1"},
	} {
		e, err := entered(t, house, journal.Reading{Words: words})
		require.NoError(t, err)
		assert.Equal(t, `weighed 8.4 kg in "tub at the door" on "old scale" at 2026-03-06 14:05 after soak 1`, e.Words())
	}
	_, err := entered(t, house, journal.Reading{Words: strings.Fields("weighed 8.4 kg in growing tray after germinate")})
	require.ErrorAs(t, err, new(journal.Refusal))
	assert.Contains(t, err.Error(), `floor "growing tray" does not say what it weighs`)
	_, err = entered(t, house, journal.Reading{Words: strings.Fields("weighed 8.4 kg in barrel after soak 1")})
	assert.ErrorContains(t, err, `no vessel, floor or kiln is called "barrel"`)
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

// A weight of one of several vessels is no part of what the record is judged by: it is told
// all the same.
func TestWhatIsNotReadIsTold(t *testing.T) {
	const house = `vessel "one" { holds 25 l; weighs 1 kg }
vessel "two" { holds 25 l; weighs 1 kg }
floor "tray" { area 0.8 m2 }
grain "lot" { species barley; moisture 12 % }
process "P" {
  make green malt
  from 6 kg of "lot"
  steep in "one" and "two" { soak 7 h in water at 13 °C }
  germinate on "tray" { hold bed at 14 to 17 °C; turn every 8 h; for 5 days }
}

batch "26-10" of "P" {
  began 2026-03-06 07:00
}
`
	e, err := entered(t, house, journal.Reading{Words: strings.Fields(`weighed 4.66 kg in "one" after soak 1`)})
	require.NoError(t, err)
	doubts, err := e.Judge(t.Context())
	require.NoError(t, err)
	require.Len(t, doubts, 1)
	assert.Equal(t, "part-of-batch", doubts[0].Rule)
}

// A line that makes a fault of another one is no better than one that is a fault itself.
func TestWhatSpoilsALineAboveIsRefused(t *testing.T) {
	record := strings.Replace(began, "}", "  bag 100 g at the start\n  weighed bag 123 g at 14:00 after soak 1\n}", 1)
	_, err := entered(t, record, journal.Reading{Words: strings.Fields("tare 1.2 kg")})
	require.ErrorAs(t, err, new(journal.Refusal))
	assert.Contains(t, err.Error(), "with it line 6 of new.malt can no longer stand: the bag weighs 123 g with a tare of 1.2 kg")
	_, err = entered(t, record, journal.Reading{Words: strings.Fields("tare 8 g")})
	require.NoError(t, err)
	spoilt := strings.Replace(record, "123 g", "1230 g", 1)
	_, err = entered(t, spoilt, journal.Reading{Words: strings.Fields("remark musty")})
	require.NoError(t, err, "it was a fault without it")
}

func TestWhatIsDoubtfulIsListed(t *testing.T) {
	e, err := entered(t, began, journal.Reading{Words: strings.Fields("weighed 9.4 kg after soak 1")})
	require.NoError(t, err)
	doubts, err := e.Judge(t.Context())
	require.NoError(t, err)
	assert.NotEmpty(t, doubts)
}
