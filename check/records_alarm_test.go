package check

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check/records"
	"maltwright/lang/finding"
	"maltwright/lang/read"
)

// A remark of a danger is told again, and one that says there is none is not.
func TestADangerInARemarkIsToldAgain(t *testing.T) {
	for text, want := range map[string]finding.Severity{
		"pink mould on the bed": finding.Danger, "black horns in it": finding.Danger, "the CO alarm went off": finding.Danger,
		"smells sour": finding.Caution, "no mould, smells of cucumber": finding.Note,
	} {
		var told []finding.Finding
		for _, f := range withSlip(t, bookSlip{file: "26-03", replaced: []string{"02:07\n", "02:07\n  remark \"" + text + "\" at 2026-03-15 09:00\n"}}) {
			if f.Rule == "remark-alarms" {
				told = append(told, f)
			}
		}
		if want == finding.Note {
			assert.Empty(t, told, text)
			continue
		}
		require.Len(t, told, 1, text)
		assert.Equal(t, want, told[0].Severity, text)
		assert.NotEmpty(t, told[0].Hint, text)
	}
}

// What follow tells are the dangers to people alone; smoke is none where the malt is dried in it.
func TestTheDangersOfABatch(t *testing.T) {
	root, err := read.OpenRoot("../examples/batches")
	require.NoError(t, err)
	defer root.Close()
	text := "use \"pale.malt\"\nbatch \"x\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  remark \"smells sour\" at 08:00\n  remark \"smoke from the kiln\" at 09:00\n}\n"
	house := File("x.malt", []byte(text), ".", root, Options{}).House
	require.Len(t, house.Batches, 1)
	list := records.Dangers(house.Batches[0])
	require.Len(t, list, 1)
	assert.Contains(t, list[0].Message, "smoke")
}
