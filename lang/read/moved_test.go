package read

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
)

// daysOfRecord is a record of some days, of which one time after the other is written wrong.
const daysOfRecord = `  began 2026-03-06 07:00
  read water 13 °C at 07:01
  weighed 7.41 kg at 14:00 after soak 1
  read water 13 °C at 23:01
  weighed 8.66 kg at 2026-03-07 06:00 after soak 2
  read water 13 °C at 15:01
  weighed 9.29 kg at 22:00 after soak 3
  read bed 16 °C at 2026-03-08 06:20
  turned at 06:30
  read bed 16 °C at 14:20
  turned at 22:00
  read bed 16 °C at 2026-03-09 06:20
  turned at 06:30
  turned at 14:30
  turned at 22:00
  read bed 16 °C at 2026-03-10 06:20
  turned at 06:30
  turned at 22:00
  turned at 2026-03-11 06:30
  turned at 22:00
`

// inOrderFaults are the faults of the times of a record with one part of it written otherwise.
func inOrderFaults(t *testing.T, was, is string) []finding.Finding {
	t.Helper()
	require.Equal(t, 1, strings.Count(daysOfRecord, was), was)
	lines := strings.Replace(daysOfRecord, was, is, 1)
	_, found := Load("main.malt", []byte(soakedThrice+"batch \"26-03\" of \"Loft pale\" {\n"+lines+"}\n"), ".", loft(t))
	return found
}

func TestOneTimeThatIsWrongIsToldOnce(t *testing.T) {
	require.Empty(t, inOrderFaults(t, "began 2026", "began 2026"))
	for name, c := range map[string]struct{ was, is, words, meant string }{
		"a date a day late":            {"at 2026-03-09 06:20", "at 2026-03-10 06:20", "2026-03-10 06:20", "2026-03-09 06:20"},
		"a date a day early":           {"at 2026-03-10 06:20", "at 2026-03-09 06:20", "2026-03-09 06:20", "2026-03-10 06:20"},
		"a date a month late":          {"at 2026-03-09 06:20", "at 2026-04-09 06:20", "2026-04-09 06:20", "2026-03-09 06:20"},
		"evening for morning":          {"at 2026-03-07 06:00 after", "at 2026-03-07 18:00 after", "2026-03-07 18:00", "2026-03-07 06:00"},
		"morning for afternoon":        {"at 14:00 after soak 1", "at 02:00 after soak 1", "02:00", "2026-03-06 14:00"},
		"a beginning in the evening":   {"began 2026-03-06 07:00", "began 2026-03-06 19:00", "2026-03-06 19:00", "2026-03-06 07:00"},
		"two lines of one visit":       {"06:20\n  turned at 06:30\n  turned at 14:30", "18:20\n  turned at 18:30\n  turned at 14:30", "2026-03-09 18:20", "2026-03-09 06:20"},
		"two lines without their date": {"14:20\n  turned at 22:00\n  read bed 16 °C at 2026-03-09", "02:20\n  turned at 02:30\n  turned at 22:00\n  read bed 16 °C at 2026-03-09", "02:20", "2026-03-08 14:20"},
	} {
		found := inOrderFaults(t, c.was, c.is)
		require.Len(t, found, 1, name)
		assert.Equal(t, "time-goes-back", found[0].Rule, name)
		assert.Equal(t, c.words, found[0].Place.Text(), name)
		assert.Contains(t, found[0].Message, c.meant, name)
		assert.Equal(t, lookAtTime, found[0].Hint, name)
	}
}

// Where one of several times may be wrong, it is told once, at the first that goes back, and
// the others are named.
func TestATimeThatOneOfSeveralExplainsIsToldWithAll(t *testing.T) {
	found := inOrderFaults(t, "at 2026-03-07 06:00 after", "at 2026-03-06 06:00 after")
	require.Len(t, found, 1)
	assert.Equal(t, "2026-03-06 06:00", found[0].Place.Text())
	var places []string
	for _, x := range found[0].Related {
		places = append(places, x.Place.Text()+": "+x.Message)
	}
	assert.Contains(t, places, "2026-03-06 07:00: 2026-03-05 07:00 in its place")
	assert.Contains(t, places, "2026-03-06 06:00: 2026-03-07 06:00 in its place")
}

// Two slips are told each, and a time that nothing settles is told where it goes back.
func TestWhatNoOneTimeExplainsIsToldLineByLine(t *testing.T) {
	found := inOrderFaults(t, "at 2026-03-09 06:20\n  turned at 06:30\n  turned at 14:30\n  turned at 22:00\n  read bed 16 °C at 2026-03-10",
		"at 2026-03-11 06:20\n  turned at 06:30\n  turned at 14:30\n  turned at 22:00\n  read bed 16 °C at 2026-03-08")
	require.GreaterOrEqual(t, len(found), 2)
	for _, f := range found {
		assert.NotContains(t, f.Message, "would fit")
	}
}

// At the end of a record any later month would be in order: none is named.
func TestATimeAtTheEndOfARecordNamesNoOtherMonth(t *testing.T) {
	found := inOrderFaults(t, "turned at 2026-03-11 06:30\n  turned at 22:00", "turned at 2026-03-08 06:30")
	require.Len(t, found, 1)
	assert.NotContains(t, found[0].Message, "2026-04")
	assert.Equal(t, "2026-03-08 06:30", found[0].Place.Text())
}
