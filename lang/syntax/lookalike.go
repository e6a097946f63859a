package syntax

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
)

// A lookalike is a number with a letter in it that looks like a digit: 8O °C, l0 h. It is
// one stray token, so that it is told as what it is, and once.

// digitFor gives the digit that a letter looks like, or 0.
func digitFor(c byte) byte {
	switch c {
	case 'O', 'o':
		return '0'
	case 'l', 'I':
		return '1'
	}
	return 0
}

// lookalike moves past a lookalike, if one stands here.
func (s *scanner) lookalike() bool {
	c := s.text[s.at]
	if !isDigit(c) && digitFor(c) == 0 && !s.signedNumber() {
		return false
	}
	n := lookalike(s.text[s.at:])
	s.at += n
	return n > 0
}

// lookalike gives the length of the number with letters in it that stands at the start of
// a text; 0 where none does. An O behind a digit is no unit, so that it is one whatever
// follows; an l may be litres, and a word may be a word, unless a unit follows.
func lookalike(text string) int {
	end, digits, noughts, ones := signLength(text), 0, 0, 0
	first := end
	for ; end < len(text) && end-first <= longestLookalike; end++ {
		switch c := text[end]; {
		case isDigit(c):
			digits++
		case digitFor(c) == '0':
			noughts++
		case digitFor(c) == '1':
			ones++
		case (c == '.' || c == '/' || c == ':') && end > first && end+1 < len(text) && (isDigit(text[end+1]) || digitFor(text[end+1]) > 0):
		default:
			return end * endsLookalike(text[first:end], text[end:], digits, noughts, ones)
		}
	}
	return end * endsLookalike(text[first:end], text[end:], digits, noughts, ones)
}

// longestLookalike keeps what is looked at for each number short.
const longestLookalike = 16

// endsLookalike is 1 where a run of digits and letters, before the rest of the text, is a
// lookalike, and else 0.
func endsLookalike(run, rest string, digits, noughts, ones int) int {
	next, _ := utf8.DecodeRuneInString(rest)
	switch {
	case digits == 0 || noughts+ones == 0 || len(run) > longestLookalike:
		return 0
	case isLetter(next) || next == '/' || next == '²' || next == '³' || next == '\'' || strings.Count(run, ".")+strings.Count(run, "/")+strings.Count(run, ":") > 1:
		return 0
	case ones == 0 && isDigit(run[0]), unitFollows(rest):
		return 1
	}
	return 0
}

// unitFollows tells whether a unit stands next that could be no word of the language.
func unitFollows(rest string) bool {
	s := scanner{text: rest}
	s.skipBlanks()
	start := s.at
	if start >= len(rest) || !s.unitStarts() {
		return false
	}
	if s.unit(); unitAndClause(rest[start:s.at]) {
		return false
	}
	_, err := quantity.Make(quantity.Part{Number: "1", Unit: rest[start:s.at]})
	return err == nil
}

// lookalikeAt tells of a lookalike. That an O is a nought is certain; an l may be a litre too.
func lookalikeAt(p *parser, t lexer.Token) finding.Finding {
	b, letters := []byte(t.Value), []string{}
	for _, c := range []struct{ letters, says string }{{"Oo", "O for a nought"}, {"lI", "l for a 1"}} {
		if strings.ContainsAny(t.Value, c.letters) {
			letters = append(letters, c.says)
		}
	}
	for i, c := range b {
		if d := digitFor(c); d > 0 {
			b[i] = d
		}
	}
	place := p.place(span(t))
	f := strayCharacter.At(place, fmt.Sprintf("%s is no number: it has a letter %s", shown(t), strings.Join(letters, " and a letter ")))
	f.Hint = fmt.Sprintf("write %s", b)
	if !strings.ContainsAny(t.Value, "lI") {
		f.Fixes = []finding.Edit{{Place: place, New: string(b)}}
	}
	return f
}
