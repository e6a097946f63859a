package read

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
)

// hintOf is the hint of the first fault of a line in a block, and the first text that it offers.
func hintOf(t *testing.T, head, line string) (hint, offer string) {
	_, found := Load("x.malt", []byte(head+" {\n"+line+"\n}\n"), ".", nil)
	for _, f := range found {
		if f.Severity < finding.Fault || f.Place.Start < len(head) {
			continue
		}
		if len(f.Offers) > 0 {
			offer = f.Offers[0].Edits[0].New
		}
		return f.Hint, offer
	}
	require.Fail(t, "no fault", line)
	return "", ""
}

func TestAUnitOfTimeIsNeverToldAsMinutesAlone(t *testing.T) {
	steep, kiln := "process \"P\" { steep in \"w\"", "process \"P\" { kiln in \"k\""
	hint, _ := hintOf(t, steep, "soak 7 foos in water")
	assert.Equal(t, "a time is written in min, h, days or weeks", hint)
	for line, want := range map[string]string{"rest 12 godz in air at 14 °C": "h", "rest 12 Std in air": "h", "soak 90 minut in water": "min"} {
		hint, offer := hintOf(t, steep, line)
		assert.Equal(t, "write "+want, hint, line)
		assert.Equal(t, want, offer, line)
	}
	hint, _ = hintOf(t, kiln, "dry 45 °C 10 godz")
	assert.Contains(t, hint, "dry at air-on 45 °C for 10 h")
	hint, offer := hintOf(t, "process \"P\"", "store 3 tygodnie")
	assert.Equal(t, "write store 3 weeks", hint)
	assert.Equal(t, "store 3 weeks", offer)
}

func TestTheEndOfAUsedFileIsOfferedWhereItLiesBeside(t *testing.T) {
	_, found := Load("x.malt", []byte("use \"slod\"\n"), ".", files{"slod.malt": ""})
	require.NotEmpty(t, found)
	assert.Equal(t, `write "slod.malt"`, found[0].Hint)
	assert.Equal(t, `"slod.malt"`, found[0].Offers[0].Edits[0].New)
	_, found = Load("x.malt", []byte("use \"other\"\n"), ".", files{"slod.malt": ""})
	assert.NotContains(t, found[0].Hint, ".malt")
}

func TestATimeInBracketsIsThatOfTheReading(t *testing.T) {
	text := soakedThrice + "batch \"26-03\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  weighed 7.65 kg after soak 1 (14:00)\n}\n"
	_, found := Load("main.malt", []byte(text), ".", loft(t))
	var fixed string
	for _, f := range found {
		for _, e := range append(f.Fixes, offered(f)...) {
			fixed += e.New
		}
		assert.NotContains(t, f.Hint, "#")
	}
	assert.Contains(t, fixed, "at ")
}

func TestAHintOfAnotherSignDoesNotRepeatADecimalComma(t *testing.T) {
	text := soakedThrice + "batch \"26-03\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  weighed 7,65 kg after soak 1 (14:00)\n}\n"
	_, found := Load("main.malt", []byte(text), ".", loft(t))
	require.NotEmpty(t, found)
	hints := ""
	for _, f := range found {
		hints += f.Hint + "\n"
	}
	assert.Contains(t, hints, "write weighed 7.65 kg after soak 1 at 14:00")
	assert.NotContains(t, hints, "7,65")
}

func offered(f finding.Finding) (list []finding.Edit) {
	for _, o := range f.Offers {
		list = append(list, o.Edits...)
	}
	return list
}

func TestOnlyThePlacesThatAKilnOfTheHouseHasAreOffered(t *testing.T) {
	for facts, want := range map[string]string{
		"draught still": "write cure at oven 80 °C for 4 h, or cure at malt 80 °C for 4 h",
		"fan 100 m3/h":  "write cure at air-on 80 °C for 4 h, or cure at malt 80 °C for 4 h",
		"draught still } kiln \"k2\" { fan 100 m3/h": "write cure at air-on 80 °C for 4 h, or cure at oven 80 °C for 4 h, or cure at malt 80 °C for 4 h",
	} {
		head := "kiln \"k\" { area 1 m2; " + facts + " }\nprocess \"P\" { kiln in \"k\""
		hint, _ := hintOf(t, head, "cure 80 °C 4 h")
		assert.Equal(t, want, hint, facts)
	}
}
