package finding

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/source"
)

func TestSeverityWordsReadBack(t *testing.T) {
	for s := Note; s <= Danger; s++ {
		got, ok := ParseSeverity(s.String())
		assert.True(t, ok)
		assert.Equal(t, s, got)
	}
	_, ok := ParseSeverity("error")
	assert.False(t, ok)
	assert.Equal(t, "unknown", Severity(9).String())
	assert.Equal(t, "unknown", Severity(-1).String())
}

func TestWorstIsTheHighest(t *testing.T) {
	_, any := Worst(nil)
	assert.False(t, any)
	worst, any := Worst([]Finding{{Severity: Caution}, {Severity: Danger}, {Severity: Note}})
	assert.True(t, any)
	assert.Equal(t, Danger, worst)
}

func TestFindingsAreInTheOrderOfTheFiles(t *testing.T) {
	a, b := source.New("a.malt", []byte("soak 7 h")), source.New("b.malt", []byte("soak 7 h"))
	at := func(f *source.File, start, end int, s Severity, message string) Finding {
		return Finding{Place: source.Place{File: f, Span: source.Span{Start: start, End: end}}, Severity: s, Rule: "r", Message: message}
	}
	sorted := []Finding{
		at(a, 0, 4, Fault, "worst first"),
		at(a, 0, 4, Note, "mildest last"),
		at(a, 5, 6, Note, "shorter first"),
		at(a, 5, 8, Note, "longer after"),
		at(b, 0, 4, Danger, "other file"),
		{Severity: Danger, Rule: "r", Message: "no file"},
	}
	mixed := []Finding{sorted[5], sorted[3], sorted[4], sorted[1], sorted[0], sorted[2]}
	assert.Equal(t, sorted, Sort(mixed))
}

func TestRepeatsAreDropped(t *testing.T) {
	f := source.New("a.malt", []byte("soak"))
	one := Finding{Place: source.Place{File: f, Span: source.Span{Start: 0, End: 4}}, Rule: "r", Message: "same"}
	other := one
	other.Message = "other"
	assert.Len(t, Sort([]Finding{one, other, one, one}), 2)
}

func TestRuleGivesItsSeverityAndAdvice(t *testing.T) {
	r := Rule{Name: "r", Severity: Caution, Why: "for this", Do: "do it"}
	f := r.At(source.Place{}, "message")
	assert.Equal(t, Finding{Severity: Caution, Rule: "r", Message: "message", Why: "for this", Hint: "do it"}, f)
}

func TestMessageThatQuotesTooMuchIsCutBetweenCharacters(t *testing.T) {
	f := Rule{}.At(source.Place{}, strings.Repeat("°", 1000))
	assert.Equal(t, strings.Repeat("°", 250)+"…", f.Message)
}
