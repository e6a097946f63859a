package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/answer/effect"
)

func TestFindingsOfTheSameWordsSayWhere(t *testing.T) {
	at := func(line int) *effect.Place { return &effect.Place{File: "hall.malt", Line: line} }
	rows := CameRows([]effect.Finding{
		{Kind: effect.CameUp, Severity: "fault", Rule: "a-rule", Message: "it fails", Place: at(64)},
		{Kind: effect.CameUp, Severity: "fault", Rule: "a-rule", Message: "it fails", Place: at(72)},
		{Kind: effect.Stays, Severity: "caution", Rule: "b-rule", Message: "it gets 31 °C warm", Before: "it gets 29 °C warm", Place: at(3)},
	})
	assert.Equal(t, []CameRow{
		{"came", "fault", "it fails [a-rule] at hall.malt:64"},
		{"came", "fault", "it fails [a-rule] at hall.malt:72"},
		{"moved", "caution", "it gets 29 → 31 °C warm [b-rule]"},
	}, rows)
}

func TestWhoTurnsIsTold(t *testing.T) {
	assert.Equal(t, "by hand", partText("by", "", "machine"))
	assert.Equal(t, "by machine", partText("by", "machine", ""))
	assert.Equal(t, "by not said", partText("by", "", "indirect"), "of flue gas nobody knows")
	assert.Equal(t, "no when", partText("when", "", "bed above 15 °C"))
	assert.Equal(t, "more at once than 1 hand can do", Hands(1, true))
	assert.Equal(t, "2 hands", Hands(2, false))
}
