package syntax

import (
	"slices"
	"strings"
	"unicode/utf8"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

func (s *scanner) unit() {
	if n := s.inchMark(); n > 0 {
		s.at += n
		return
	}
	first := s.unitWord()
	for _, more := range furtherWords(first) {
		if s.words(more) {
			return
		}
	}
	if slices.Contains(joined, first) {
		s.join(first)
	}
}

// unitWord takes the letters and signs of a unit up to the first blank.
func (s *scanner) unitWord() string {
	start := s.at
	for s.at < len(s.text) {
		r, size := utf8.DecodeRuneInString(s.text[s.at:])
		if !isLetter(r) && s.text[s.at] != latin1Degree && !strings.ContainsRune("%°º/²³^-µ", r) && !s.power() {
			break
		}
		s.at += size
	}
	return s.text[start:s.at]
}

// joined are first words of a unit that the next word may be part of: sq ft, deg F.
var joined = append(quantity.Degrees(), "sq", "square", "cu", "cubic", "short", "long")

// join takes the next word if it makes a unit with the first.
func (s *scanner) join(first string) {
	save := s.at
	s.skipBlanks()
	if s.at < len(s.text) {
		if _, ok := quantity.Lookup(first + " " + s.unitWord()); ok {
			return
		}
	}
	s.at = save
}

// furtherWords are what may stand behind the first word of a unit, as part of it.
func furtherWords(first string) [][]string {
	if more, ok := further[first]; ok {
		return more
	}
	switch u, ok := quantity.Lookup(first); {
	case !ok || u.Dimension != quantity.Length:
		return nil
	case vocabulary.IsClause(first): // 7 in water is no pressure
		return columns[1:]
	}
	return columns
}

var further = map[string][][]string{
	"%":   {{"dry", "basis"}, {"wet", "basis"}, {"d.b."}, {"w.b."}, {"db"}, {"wb"}},
	"per": {{"cent"}},
}

// columns are what makes a length that of a column of water, which is a pressure.
var columns = [][]string{{vocabulary.PlaceWater}, {"of", vocabulary.PlaceWater}, {"H2O"}, {"wc"}, {"wg"}, {"w.c."}, {"w.g."}, {"WC"}, {"WG"}, {"WS"}}

// power tells whether the 2 or 3 of m2 or m3 stands here, and not the start of
// the next number, as in 1h30min.
func (s *scanner) power() bool {
	next, _ := utf8.DecodeRuneInString(s.text[s.at+1:])
	if strings.HasPrefix(s.text[s.at:], "2O") && strings.HasSuffix(s.text[:s.at], "H") { // of mmH2O
		return true
	}
	return (s.peek(0) == '2' || s.peek(0) == '3') && !isLetter(next) && !isDigit(s.peek(1))
}

// words takes the words, with blanks between them, if they stand here.
func (s *scanner) words(list []string) bool {
	save := s.at
	for _, word := range list {
		s.skipBlanks()
		if !strings.HasPrefix(s.text[s.at:], word) {
			s.at = save
			return false
		}
		s.at += len(word)
	}
	if next, _ := utf8.DecodeRuneInString(s.text[s.at:]); isLetter(next) || isDigit(s.peek(0)) {
		s.at = save
		return false
	}
	return true
}
