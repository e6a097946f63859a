package offer

import (
	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// tellsNothing is how many times its low end the high end of a band is that is there for slips alone: a
// vessel holds 1 l to 300 m3.
const tellsNothing = 100

// sensible says what is usual for a value by the vocabulary, with what else its block says; "" where
// that tells nothing.
func (l *list) sensible(s *vocabulary.Sense, d quantity.Dimension) string {
	if s = s.OfAny(d); s == nil {
		return ""
	}
	words, chosen := map[string]bool{}, []string{}
	for _, st := range l.block.Statements {
		words[st.Verb.Text] = true
		for _, t := range st.Terms {
			if w, ok := t.(syntax.Word); ok {
				words[st.Verb.Text+" "+w.Text] = true
				chosen = append(chosen, w.Text)
			}
		}
	}
	s = s.Beside(words)
	var band quantity.Range
	known, of := false, ""
	if s.Usual != nil {
		band, known = *s.Usual, true
	}
	for _, word := range chosen {
		if by, ok := s.UsualOf(word); ok {
			band, known, of = by, true, " for "+word
		}
	}
	if !known || d != quantity.Temperature && band.High.SI > tellsNothing*band.Low.SI {
		return ""
	}
	text := l.known.System.Retold(band.String()) + " is usual" + of
	if s.Standing != "" {
		text += " (" + s.Standing + ")"
	}
	return text
}
