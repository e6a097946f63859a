package serve

import (
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A batch that is over shows what came of it, the malt first, each figure with how it is known.
func TestABatchThatIsOverShowsWhatCameOfIt(t *testing.T) {
	s, _ := growing(t)
	text := plain(s.page(linked(t, s.page("/"), "26-04")))
	for _, want := range []string{"What came of it figure it came to known how malt clean malt 4.93 kg measured yield as is 82.2 % measured", "whole batch 8 d 23 h measured", "to steep-out 1 d 15 h"} {
		assert.Contains(t, text, want)
	}
	assert.NotContains(t, text, "Now", "nothing goes on in it")
}

// The lines of a record that cannot be forecast still have their days and times.
func TestLinesOfARecordThatIsNotForecastHaveTheirTimes(t *testing.T) {
	s, batch := growing(t)
	s.put("pale.malt", strings.Replace(s.read("pale.malt"), "make pale malt", "make pale\n  until nothing", 1))
	text := plain(s.page(batch))
	assert.Contains(t, text, "Friday 10 April")
	assert.Contains(t, text, "13:30 weighed 7.39 kg at 13:30 after soak 1")
}

// A batch of which nothing was noted for days says what is missing, and not what was to be done before it was wet.
func TestABatchOfWhichNothingWasNotedSaysWhatIsMissing(t *testing.T) {
	s, batch := growing(t)
	s.without("26-05.malt", "  read    water 14.3")
	text := plain(s.page(batch))
	assert.Contains(t, text, "not noted 3 visits left no line in the record: write down what was done")
	assert.Contains(t, text, "Fri 10 Apr 13:30 drain soak 1, weigh")
	assert.Contains(t, text, "because nothing was read since")
	assert.NotContains(t, text, "have ready")
	assert.NotContains(t, text, "Now: ")
}

// A page has one time that its figures are of.
func TestTheFiguresOfAPageAreOfOneTime(t *testing.T) {
	s, batch := growing(t)
	s.page(batch)
	s.at("2026-04-14 12:04")
	page := s.page(batch)
	assert.Contains(t, page, ">Tue 14 Apr, 12:00</time>", "they were made then, and are kept for five minutes")
	assert.NotContains(t, plain(page), "As of 12:0")
}

// What cannot be supposed is told of the line that was typed.
func TestWhatCannotBeSupposedIsToldOfTheLine(t *testing.T) {
	s, batch := growing(t)
	page := s.page(batch)
	process := strings.TrimSuffix(linked(t, page, "suppose it of Loft pale"), "#whatif")
	for line, want := range map[string]string{
		"soak 1 na 6 godzin": "“soak 1 na 6 godzin” does not say what is otherwise: write what, the word to, and how much",
		"soak 9 to 6 h":      "“soak 9 to 6 h”: \"Loft pale\" has at most 3 steps of the kind soak",
		"site air to 5":      "“site air to 5”: 5 has no unit",
	} {
		a := s.post(process+"/what-if", "lines", line)
		assert.Equal(t, http.StatusUnprocessableEntity, a.status)
		text := plain(a.body)
		assert.Contains(t, text, want)
		for _, not := range []string{"--change", "Not written", "did you mean Pa", "its form:"} {
			assert.NotContains(t, text, not)
		}
	}
}
