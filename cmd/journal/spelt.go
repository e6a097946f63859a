package journal

import (
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// The words with which readings begin.
const (
	weighed = "weighed"
	counted = "counted"
	felt    = "felt"
	readAt  = "read"
	turned  = "turned"
)

// Begins tells whether a reading begins with a word, be it that of a line or one that stands by
// itself. A number may be anything.
func Begins(word string) bool {
	_, known := vocabulary.Lookup(vocabulary.Batch, word)
	return known || len(spelt([]string{word, "1"})) > 2 && !(word[0] >= '0' && word[0] <= '9')
}

// spelt gives the words of a reading as a line of the record has them: in front of a weight, a
// count, a rub, a place or a temperature by itself goes the word that such a line begins with.
func spelt(words []string) []string {
	tokens := strings.Fields(strings.Join(words, " "))
	if len(tokens) == 0 {
		return words
	}
	front := func(more ...string) []string { return append(more, words...) }
	first := tokens[0]
	_, isPlace := vocabulary.FindPlace(first)
	_, known := vocabulary.Lookup(vocabulary.Batch, first)
	switch {
	case first == ofBag && len(tokens) > 1 && !strings.Contains(strings.Join(tokens, " "), " at the start"):
		return front(weighed) // it is the raw grain in it that stands "at the start"
	case known:
		return words
	case isPlace:
		return front(readAt)
	case first == vocabulary.MeasureChit || first == vocabulary.MeasureAcrospire:
		return front(counted)
	case first == vocabulary.MeasureRub:
		return front(felt)
	case first == vocabulary.RubGummy || first == vocabulary.RubGritty || first == vocabulary.RubChalky:
		return front(felt, vocabulary.MeasureRub)
	case first[0] >= '0' && first[0] <= '9' || strings.HasPrefix(first, "−") || strings.HasPrefix(first, "-"):
		return append(ofNumber(strings.Join(tokens, " ")), words...)
	}
	return words
}

const (
	ofBag     = "bag"
	ofHowMany = "of"
)

// ofNumber gives the words that go in front of a reading which begins with a number, none where
// it may be anything.
func ofNumber(text string) []string {
	s, err := statement(weighed + " " + text)
	if err != nil || len(s.Terms) == 0 {
		return nil
	}
	a, ok := s.Terms[0].(syntax.Amount)
	if !ok {
		return nil
	}
	q, err := value.Made(a.Low.Written(), nil)
	if err != nil {
		return nil
	}
	of := false
	for _, c := range s.Clauses {
		of = of || c.Word.Text == ofHowMany
	}
	switch {
	case q.Dimension == quantity.Mass:
		return []string{weighed}
	case q.Dimension == quantity.Temperature:
		return []string{readAt}
	case q.Dimension == quantity.Number && len(s.Terms) == classes:
		return []string{counted, vocabulary.MeasureAcrospire}
	case of:
		return []string{counted, vocabulary.MeasureChit}
	}
	return nil
}

// classes are those into which acrospires are sorted.
const classes = 6
