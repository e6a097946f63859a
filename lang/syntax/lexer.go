// Package syntax turns the text of a process file into a tree of statements.
//
// It works in two layers. A hand-written lexer, behind participle's lexer
// interface, cuts the text into tokens; it knows what only a reader of the line
// can know: that the "in" of "9 in" is a unit and that of "7 h in water" is not,
// or that "43 to 45 %" is one range and "to moisture 43 %" a clause. On top of it
// a participle grammar reads one header - the part of a statement before its
// block - at a time, and a few lines of Go nest the blocks. A header that does
// not read costs that header alone: the finding is noted, the tokens up to the
// statement's end are skipped, and its block is read all the same.
//
// The tree means nothing yet. It holds words, quantities and where they stand;
// which of them make sense together is settled by the vocabulary.
package syntax

import (
	"io"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"

	"maltwright/lang/calendar"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// definition makes the lexer known to participle.
type definition struct{ kinds map[string]lexer.TokenType }

// Symbols gives the token kinds by name.
func (d definition) Symbols() map[string]lexer.TokenType { return d.kinds }

// Lex reads the whole text and lexes it.
func (d definition) Lex(name string, r io.Reader) (lexer.Lexer, error) {
	text, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	return d.LexString(name, string(text))
}

// LexString lexes a text held in memory.
func (definition) LexString(_ string, text string) (lexer.Lexer, error) {
	return &scanner{text: text}, nil
}

// scanner cuts text into tokens. It never fails: what it does not know becomes a
// stray token, which the parser reports.
type scanner struct {
	text    string
	at      int
	last    lexer.TokenType // kind of the token before, for what depends on it
	step    bool            // the number of a step may stand next, behind the word of a statement that names one
	verb    string          // the word that began the statement
	before  string          // the token before
	wanted  vocabulary.Hand // what of a time may stand next
	between bool            // a span of time began with that word
	twelve  bool            // the time of day before, with a "to" behind it or not, says am or pm
	vague   bool            // some word hangs on the whole file for its meaning: see settle
	count   int
	cut     bool // there are more tokens than a file may have
}

// Next gives the next token; at the end of the text, or past as many tokens as a
// file may have, it gives EOF, for ever.
func (s *scanner) Next() (lexer.Token, error) {
	s.skipBlanks()
	start := s.at
	s.cut = start < len(s.text) && s.count == maxTokens
	if start >= len(s.text) || s.cut {
		return lexer.Token{Type: lexer.EOF, Pos: lexer.Position{Offset: start}}, nil
	}
	s.count++
	kind := s.scan()
	value := s.text[start:s.at]
	s.step = kind == kindWord && (vocabulary.NamesStep(value) || s.step) || kind == kindQuantity && s.step
	s.twelve = kind == kindClock && ofTwelve(value) || kind == kindTo && s.twelve
	s.expect(kind, value)
	s.vague = s.vague || s.twelve || kind == kindClock && bareHour(value) || kind == kindQuantity && vague(value)
	s.last, s.before = kind, value
	return lexer.Token{Type: kind, Value: value, Pos: lexer.Position{Offset: start}}, nil
}

func (s *scanner) skipBlanks() {
	for s.at < len(s.text) {
		switch c := s.text[s.at]; {
		case c == ' ' || c == '\t':
			s.at++
		case c == 0xc2 && strings.HasPrefix(s.text[s.at:], "\u00a0"):
			s.at += 2
		case c == 0xe2 && (strings.HasPrefix(s.text[s.at:], "\u202f") || strings.HasPrefix(s.text[s.at:], "\u2009")):
			s.at += 3
		case s.at == 0 && strings.HasPrefix(s.text, "\ufeff"):
			s.at += 3
		default:
			return
		}
	}
}

// scan reads one token at s.at, moves past it and tells its kind.
func (s *scanner) scan() lexer.TokenType {
	c := s.text[s.at]
	if c < utf8.RuneSelf {
		if kind, ok := single[c]; ok {
			s.at++
			return kind
		}
	}
	switch {
	case c == '\r':
		s.at++
		if s.peek(0) == '\n' {
			s.at++
		}
		return kindEnd
	case c == '#':
		s.at += len(strings.TrimRight(s.text[s.at:s.lineEnd()], blanks))
		return kindComment
	case s.sign():
		return kindBound
	case s.lookalike():
		return kindStray
	case s.numberStarts() || s.signedNumber():
		return s.scanNumber()
	case c == 'T' && s.last == kindDate && (clockStarts(s.text[s.at+1:]) || calendar.LeadingClock(s.text[s.at+1:], true) > 0): // 2026-03-06T07:00
		s.at++
		return s.scanNumber()
	case s.monthStarts() && s.date():
		return kindDate
	}
	return s.scanOther()
}

var single = map[byte]lexer.TokenType{
	'{': kindOpen, '}': kindClose, ';': kindEnd, '\n': kindEnd,
}

func (s *scanner) scanOther() lexer.TokenType {
	r, size := utf8.DecodeRuneInString(s.text[s.at:])
	switch {
	case openQuote(r):
		return s.scanText()
	case s.dashRange(r):
		s.at += size
		return kindTo
	case isLetter(r):
		return s.scanWord()
	}
	s.at += size
	return kindStray
}

// sign moves past the sign of a bound, if one stands here.
func (s *scanner) sign() bool {
	n := vocabulary.SignLength(s.text[s.at:])
	s.at += n
	return n > 0
}

// scanText reads a text up to its closing quote. One that is not closed on its
// line ends with the line, but not with a brace that opens a block there; the
// parser reports it.
func (s *scanner) scanText() lexer.TokenType {
	end, closed := quoteEnd(s.text, s.at)
	if !closed {
		text := strings.TrimRight(s.text[s.at:end], blanks)
		if before, opens := strings.CutSuffix(text, "{"); opens {
			text = strings.TrimRight(before, blanks)
		}
		end = s.at + len(text)
	}
	s.at = end
	return kindText
}

// blanks are what may stand between words: a narrow and a thin space too, which programs put in front of units.
const blanks = " \t\u00a0\u202f\u2009"

// quoteEnd gives the end of the quoted text that begins at an offset, and whether
// it is closed before the line ends.
func quoteEnd(text string, at int) (end int, closed bool) {
	_, size := utf8.DecodeRuneInString(text[at:])
	escaped := false
	for i := at + size; i < len(text); i += size {
		r, n := utf8.DecodeRuneInString(text[i:])
		switch size = n; {
		case r == '\n' || r == '\r':
			return i, false
		case escaped:
			escaped = false
		case r == '\\':
			escaped = true
		case closeQuote(r):
			return i + n, true
		}
	}
	return len(text), false
}

func (s *scanner) scanWord() lexer.TokenType {
	if kind := s.led(); kind != 0 {
		return kind
	}
	word := s.takeWord()
	switch {
	case s.untilTime(word):
		return kindTo
	case s.bound(word):
		return kindBound
	case word == vocabulary.To && s.betweenValues():
		return kindTo
	case s.namedTime(word):
		s.dateBehind()
		return kindClock
	case vocabulary.IsClause(word):
		return kindClause
	}
	return kindWord
}

func (s *scanner) takeWord() string {
	start := s.at
	for s.at < len(s.text) {
		c := s.text[s.at]
		if c < utf8.RuneSelf {
			if !wordByte[c] {
				break
			}
			s.at++
			continue
		}
		r, size := utf8.DecodeRuneInString(s.text[s.at:])
		if !isLetter(r) {
			break
		}
		s.at += size
	}
	return s.text[start:s.at]
}

// bound moves past the rest of a bound that begins with a word just read, and tells
// whether one does.
func (s *scanner) bound(first string) bool {
	rests := vocabulary.BoundRests(first)
	if rests == nil {
		return false
	}
	save := s.at
	s.skipBlanks()
	if rest := s.takeWord(); rest != "" && slices.Contains(rests, rest) {
		return true
	}
	s.at = save
	return slices.Contains(rests, "")
}

// betweenValues tells whether a "to" just read stands between two values. That of
// "changed soak 3 to 5 h" does not: the 3 says which soak.
func (s *scanner) betweenValues() bool {
	if !valueKind(s.last) || s.step {
		return false
	}
	save := s.at
	s.skipBlanks()
	s.at += signLength(s.text[s.at:])
	value := quantity.NumberBegins(s.text[s.at:]) || s.last == kindDate && calendar.LeadingDate(s.text[s.at:], true) > 0 || s.namedTime(s.takeLetters())
	s.at = save
	return value
}

// dashRange accepts a dash between two values as "to": 14–17 °C.
func (s *scanner) dashRange(r rune) bool {
	if r != '-' && r != '–' && r != '—' || !valueKind(s.last) {
		return false
	}
	rest := strings.TrimLeft(s.text[s.at+utf8.RuneLen(r):], " \t")
	return quantity.NumberBegins(rest)
}

func valueKind(k lexer.TokenType) bool {
	return k == kindQuantity || k == kindClock || k == kindDate
}

func (s *scanner) peek(n int) byte {
	if s.at+n < len(s.text) {
		return s.text[s.at+n]
	}
	return 0
}

func (s *scanner) lineEnd() int {
	if i := strings.IndexAny(s.text[s.at:], "\r\n"); i >= 0 {
		return s.at + i
	}
	return len(s.text)
}

var wordByte = func() (set [utf8.RuneSelf]bool) {
	for c := range set {
		set[c] = c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '-' || c == '_' || c == '\''
	}
	return set
}()

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

func isLetter(r rune) bool { return r == '_' || r > ' ' && unicode.IsLetter(r) }

func openQuote(r rune) bool  { return r == '"' || r == '“' || r == '„' }
func closeQuote(r rune) bool { return r == '"' || r == '”' || r == '“' }
