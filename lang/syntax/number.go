package syntax

import (
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// signedNumber tells whether a minus sign and a digit stand here. Behind a value
// a dash is the "to" of a range instead.
func (s *scanner) signedNumber() bool {
	rest := s.text[s.at:]
	n := signLength(rest)
	return n > 0 && quantity.NumberBegins(rest[n:]) && !valueKind(s.last)
}

func signLength(text string) int {
	switch {
	case strings.HasPrefix(text, "-"):
		return 1
	case strings.HasPrefix(text, "\u2212"):
		return len("\u2212")
	}
	return 0
}

// scanNumber reads a quantity, a date or a time of day.
func (s *scanner) scanNumber() lexer.TokenType {
	start := s.at
	s.at += signLength(s.text[start:])
	first := s.at
	if first == start && s.date() {
		return kindDate
	}
	s.digits()
	if s.clock(first) {
		return kindClock
	}
	s.at = start
	for s.part() && s.partFollows() {
		s.skipBlanks()
	}
	return kindQuantity
}

// clockStarts tells whether a time of day stands at the start: 7:30, 07:30.
func clockStarts(text string) bool {
	colon := strings.IndexByte(text[:min(len(text), 3)], ':')
	return colon > 0 && isDigit(text[0]) && isDigit(text[colon-1]) && len(text) > colon+1 && isDigit(text[colon+1])
}

// part reads one number and, where one stands there, its unit.
func (s *scanner) part() (hasUnit bool) {
	s.number()
	end := s.at
	s.skipBlanks()
	if s.at < len(s.text) && s.unitStarts() {
		s.unit()
		return true
	}
	s.at = end
	return false
}

// partFollows tells whether a further number with a unit stands next: the 30 min
// of 1 h 30 min.
func (s *scanner) partFollows() bool {
	save := s.at
	defer func() { s.at = save }()
	s.skipBlanks()
	return s.numberStarts() && lookalike(s.text[s.at:]) == 0 && !s.timeStarts() && s.part()
}

// number reads the digits of 12, 12.4, .5, 3/4, ½, 8 1/3 or 8½. A decimal comma is taken
// too, so that quantity can say what is wrong with it.
func (s *scanner) number() {
	s.at += signLength(s.text[s.at:])
	s.digits()
	switch c := s.peek(0); {
	case (c == '.' || c == ',' || c == '/') && isDigit(s.peek(1)):
		s.at++
		s.digits()
	default:
		s.mixedFraction()
	}
	s.glued()
}

// glued takes fractions right behind a number, and what stands right behind them, so that
// 1.5½ is seen as a whole and can be told as no number.
func (s *scanner) glued() {
	for s.at < len(s.text) {
		r, size := utf8.DecodeRuneInString(s.text[s.at:])
		if before, _ := utf8.DecodeLastRuneInString(s.text[:s.at]); !quantity.IsFraction(r) && !(isDigit(s.text[s.at]) && quantity.IsFraction(before)) {
			return
		}
		s.at += size
	}
}

func (s *scanner) digits() {
	for isDigit(s.peek(0)) {
		s.at++
	}
}

// mixedFraction takes the " 1/3" of "8 1/3", or the "½" of "8½".
func (s *scanner) mixedFraction() {
	save := s.at
	for s.peek(0) == ' ' {
		s.at++
	}
	top := s.at
	if r, size := utf8.DecodeRuneInString(s.text[s.at:]); quantity.IsFraction(r) {
		s.at += size
		return
	}
	s.digits()
	if top == save || s.at == top || s.peek(0) != '/' || !isDigit(s.peek(1)) {
		s.at = save
		return
	}
	s.at++
	s.digits()
}

// unitStarts tells whether what follows a number is its unit.
func (s *scanner) unitStarts() bool {
	if s.inchMark() > 0 {
		return true
	}
	r, _ := utf8.DecodeRuneInString(s.text[s.at:])
	if r == '%' || r == '°' || r == 'º' || r == 'µ' || s.text[s.at] == latin1Degree {
		return true
	}
	if !isLetter(r) {
		return false
	}
	save := s.at
	word := s.takeLetters()
	s.skipBlanks()
	next, _ := utf8.DecodeRuneInString(s.text[s.at:])
	column := slices.ContainsFunc(furtherWords(word), s.words)
	after := s.takeLetters()
	s.at = save
	if unitAndClause(word) { // inches, unless something to be in follows
		return column || vocabulary.Follows(after) || !isLetter(next) && !openQuote(next)
	}
	return !vocabulary.Follows(word)
}

// inchMark gives the length of a mark of inches or feet right behind a digit, 1" or 6', and 0
// where none stands here. A quote with a letter behind it opens a text. No unit is written so,
// and as one it is told of; a name that it opened would swallow the rest of the line.
func (s *scanner) inchMark() int {
	if s.at == 0 || s.at == len(s.text) {
		return 0
	}
	if before, _ := utf8.DecodeLastRuneInString(s.text[:s.at]); !isDigit(s.text[s.at-1]) && !quantity.IsFraction(before) {
		return 0
	}
	r, size := utf8.DecodeRuneInString(s.text[s.at:])
	if next, _ := utf8.DecodeRuneInString(s.text[s.at+size:]); quantity.OfMark(string(r)) == "" || isLetter(next) {
		return 0
	}
	return size
}

// unitAndClause tells whether a word is a unit and opens a clause as well, as in does.
func unitAndClause(word string) bool {
	if !vocabulary.IsClause(word) {
		return false
	}
	_, unit := quantity.Lookup(word)
	return unit
}

// longestNotUnit is above the length of every word that is no unit.
const longestNotUnit = 16

// takeLetters takes the letters that stand here, but no more of them than tell
// which of the words that are no unit they are: looking further ahead at each
// number of 1h1h1h... would take the square of its length.
func (s *scanner) takeLetters() string {
	start := s.at
	for s.at < len(s.text) && s.at-start < longestNotUnit {
		r, size := utf8.DecodeRuneInString(s.text[s.at:])
		if !isLetter(r) {
			break
		}
		s.at += size
	}
	return s.text[start:s.at]
}

// latin1Degree is the degree sign in a file that was not saved as UTF-8. It is
// read as one, so that such a file gives the finding about its bytes and no other.
const latin1Degree = 0xb0
