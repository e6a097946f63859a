package outline

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/source"
)

const stepped = `process "Other" { steep in "a" { soak 1 h } }
process "P" {
  steep in "a" {
    soak 2 h
    repeat 2 times {
      soak 3 h
      soak 4 h
      rest 5 h in air
    }
    soak 6 h
    repeat until moisture at least 43 % { soak 7 h; rest 8 h in air }
  }
  germinate on "f" { hold bed at 14 °C }
  kiln in "k" { dry at air-on 50 °C for 9 h; dry at air-on 60 °C for 10 h }
}
`

func TestAStepIsFoundAsAForecastCounts(t *testing.T) {
	tree := parsed(stepped)
	for _, c := range []struct {
		word   string
		number int
		head   string
	}{
		{"soak", 0, "soak 2 h"}, {"soak", 1, "soak 2 h"}, {"soak", 2, "soak 3 h"}, {"soak", 3, "soak 4 h"}, {"soak", 4, "soak 3 h"},
		{"soak", 5, "soak 4 h"}, {"soak", 6, "soak 6 h"}, {"soak", 7, "soak 7 h"}, {"soak", 700, "soak 7 h"}, {"rest", 2, "rest 5 h in air"}, {"rest", 3, "rest 8 h in air"},
		{"dry", 2, "dry at air-on 60 °C for 10 h"}, {"dry", 3, ""}, {"germinate", 1, `germinate on "f"`}, {"cure", 1, ""}, {"make", 1, ""},
	} {
		at, ok := StepOf(tree, "P", c.word, c.number)
		assert.Equal(t, c.head != "", ok, "%s %d", c.word, c.number)
		assert.Equal(t, c.head, at.Text(), "%s %d", c.word, c.number)
	}
}

func TestAStepThatARecordNames(t *testing.T) {
	text := "batch \"b\" of \"P\" {\n began 2026-03-06 07:00\n weighed 8 kg at 14:00 after soak 12 by \"AK\"\n changed dry 2 to 5 h because \"x\"\n weighed 8 kg after wither\n}\n"
	tree := parsed(text)
	for _, c := range []struct {
		at, is string
		number int
	}{{"soak 12", "soak", 12}, {"12 by", "soak", 12}, {"dry 2", "dry", 2}, {"wither", "wither", 0}, {"8 kg", "", 0}, {"because", "", 0}, {"began", "", 0}, {"of \"P\"", "", 0}} {
		s, ok := StepAt(tree, strings.Index(text, c.at))
		assert.Equal(t, c.is != "", ok, c.at)
		if ok {
			assert.Equal(t, c.is, s.Word)
			assert.Equal(t, c.number, s.Number)
			assert.Equal(t, "P", s.Process.Text)
			assert.Equal(t, source.Span{Start: strings.Index(text, c.is), End: s.Place.End}, s.Place.Span)
		}
	}
}
