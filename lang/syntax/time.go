package syntax

import (
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"

	"maltwright/lang/calendar"
	"maltwright/lang/vocabulary"
)

// Dates and times of day are read as people write them. What is one wherever it stands, such
// as 27.01.2026, is taken anywhere; 7.30 or 27 Jan only where one is wanted: right behind the
// word of a statement or clause that takes one, beside the other of both, and behind a "to"
// or an "and". What may mean several is a token all the same, so that it is told with all
// that it may mean.

// startsStatement tells whether what stands behind a token of that kind begins a statement.
func startsStatement(last lexer.TokenType) bool {
	switch last {
	case 0, kindEnd, kindOpen, kindClose, kindComment:
		return true
	}
	return false
}

// expect notes what a token says of the one behind it.
func (s *scanner) expect(kind lexer.TokenType, value string) {
	switch kind {
	case kindWord, kindClause:
		if startsStatement(s.last) {
			s.verb, s.between = value, false
		}
		if value != vocabulary.And {
			s.wanted = vocabulary.TimeBehind(s.verb, value)
		}
	case kindDate:
		s.wanted.Clock = true
	case kindTo, kindClock:
	default:
		s.wanted = vocabulary.Hand{}
	}
}

// date takes the date that stands here, with what only joins it to its time of day.
func (s *scanner) date() bool {
	n := calendar.LeadingDate(s.text[s.at:], s.wanted.Date)
	if n == 0 {
		return false
	}
	s.at += n
	for s.last == kindClock && (s.half() || s.ofClock()) { // 7:30 2026-03-06 am: it makes no date of it
	}
	s.joint(func(rest string) int { return calendar.LeadingClock(rest, true) }, ",", vocabulary.ClauseAt)
	return true
}

// leading are words that may stand in front of a time where the language has none: began at
// 2026-03-06 07:00, awake between 6:30 and 22:30.
var leading = []string{vocabulary.ClauseAt, vocabulary.ClauseOn, vocabulary.ClauseFrom, between}

const between = "between"

// led moves past a word that only leads to a time, behind a word of a statement that takes one, and
// reads the time. Kind is 0 where none stands here.
func (s *scanner) led() (kind lexer.TokenType) {
	if s.last != kindWord || s.before != s.verb || s.wanted == (vocabulary.Hand{}) {
		return 0
	}
	save := s.at
	word := s.takeWord()
	s.skipBlanks()
	if rest := s.text[s.at:]; slices.Contains(leading, word) && s.at > save+len(word) {
		switch {
		case s.wanted.Date && calendar.LeadingDate(rest, true) > 0, s.wanted.Clock && calendar.LeadingClock(rest, true) > 0:
			if kind = s.scan(); kind == kindDate || kind == kindClock {
				s.between = word == between
				return kind
			}
		}
	}
	s.at = save
	return 0
}

// untilTime tells whether a word just read stands between two times as a "to" does: until, or the
// "and" of between.
func (s *scanner) untilTime(word string) bool {
	ends := word == vocabulary.ClauseUntil || word == "till" || word == vocabulary.And && s.between
	if !ends || s.last != kindClock && s.last != kindDate {
		return false
	}
	rest := strings.TrimLeft(s.text[s.at:], blanks)
	return calendar.LeadingDate(rest, s.wanted.Date)+calendar.LeadingClock(rest, s.wanted.Clock) > 0
}

// joint takes a comma or a word where what stands behind it goes with what stands before.
func (s *scanner) joint(next func(rest string) int, joints ...string) {
	save := s.at
	s.skipBlanks()
	for _, j := range joints {
		rest, ok := strings.CutPrefix(s.text[s.at:], j)
		if !ok {
			continue
		}
		after := strings.TrimLeft(rest, blanks)
		if (j == "," || after != rest && s.at > save) && next(after) > 0 {
			s.at += len(j)
			return
		}
	}
	s.at = save
}

// monthStarts tells whether the word that stands here may be a month or a weekday with a date.
func (s *scanner) monthStarts() bool {
	if s.at+2 >= len(s.text) || startsStatement(s.last) {
		return false
	}
	return calendar.Named(s.text[s.at : s.at+3])
}

// hour takes the time of day that begins with digits and has neither a colon nor a half of
// the day. A number with its unit is none.
func (s *scanner) hour(first int) bool {
	if !s.wanted.Clock && !s.clockWordStarts() { // as most numbers
		return false
	}
	n := calendar.LeadingClock(s.text[first:], s.wanted.Clock)
	if n == 0 || first+n < s.at {
		return false
	}
	if c, _ := calendar.ReadClock(s.text[first : first+n]); c.Long && s.last != kindDate {
		return false
	}
	save := s.at
	s.at = first + n
	here := s.at
	s.skipBlanks()
	figures := !strings.ContainsFunc(s.text[first:here], isLetter)
	if s.at < len(s.text) && figures && s.at > here && s.unitStarts() && !s.dateStarts(0) {
		s.at = save
		return false
	}
	s.at = here
	s.dateBehind()
	return true
}

// clockWordStarts tells whether what stands here may be the Uhr or o'clock of a time of day.
func (s *scanner) clockWordStarts() bool {
	rest := strings.TrimLeft(s.text[s.at:], blanks)
	return rest != "" && strings.IndexByte("uUoO", rest[0]) >= 0
}

// ofClock takes a word that says that a time of day stands in front of it: Uhr, o'clock, h.
func (s *scanner) ofClock() bool {
	save := s.at
	s.skipBlanks()
	switch strings.ToLower(s.takeWord()) {
	case "uhr", "o'clock", "h":
		return true
	}
	s.at = save
	return false
}

// dateBehind takes what joins a time of day to its date behind it: 14:00 on 2026-03-06.
func (s *scanner) dateBehind() {
	for s.half() || s.ofClock() { // noon am: it belongs to the time, and makes none of it
	}
	if s.wanted.Date {
		s.joint(func(rest string) int { return calendar.LeadingDate(rest, false) }, ",", vocabulary.ClauseOn, vocabulary.ClauseOf)
	}
}

// dateStarts tells whether a date stands so many bytes on.
func (s *scanner) dateStarts(on int) bool {
	return calendar.LeadingDate(s.text[s.at+on:], false) > 0
}

// timeStarts tells whether a date or a time of day stands here that could be nothing else.
func (s *scanner) timeStarts() bool {
	return calendar.LeadingClock(s.text[s.at:], false) > 0 || s.dateStarts(0)
}

// zone takes the offset of a time of day that names one: 07:00Z, 07:00+01:00. Behind a dash the
// other end of a span would stand.
func (s *scanner) zone() {
	const offset = "+00:00"
	switch next, _ := utf8.DecodeRuneInString(s.text[min(s.at+1, len(s.text)):]); {
	case s.peek(0) == 'Z' && !isLetter(next) && !isDigit(s.peek(1)):
		s.at++
	case s.peek(0) == '+' && clockStarts(s.text[s.at+1:]):
		s.at = min(s.at+len(offset), len(s.text))
	}
}

// plainDate is a date as the tree has it: 2026-03-06, where it can be of one day only.
func plainDate(token string) string {
	iso, _ := calendar.Canonical(withoutJoint(unled(token), ",", " "+vocabulary.ClauseAt))
	return foldBlanks(iso)
}

// unled is a token without the word that leads to it.
func unled(token string) string {
	for _, word := range leading {
		if rest, ok := strings.CutPrefix(token, word); ok && strings.TrimLeft(rest, blanks) != rest {
			return strings.TrimLeft(rest, blanks)
		}
	}
	return token
}

// withoutJoint is a token without what joins it to the one behind it.
func withoutJoint(token string, joints ...string) string {
	text := strings.TrimRight(token, blanks)
	for _, j := range joints {
		if rest, ok := strings.CutSuffix(text, j); ok {
			return strings.TrimRight(rest, blanks)
		}
	}
	return text
}

// plainClock is a time of day as the tree has it: with a colon, or am or pm. 7.30 is 7:30,
// which may be of the evening where others say am or pm; 7h30 and 14 Uhr are of 24 hours.
func plainClock(token string) string {
	text := foldBlanks(withoutJoint(strings.TrimPrefix(unled(token), "T"), ",", " "+vocabulary.ClauseOn, " "+vocabulary.ClauseOf))
	last, _ := utf8.DecodeLastRuneInString(text)
	if ofTwelve(text) || strings.Contains(text, ":") && last >= '0' && last <= '9' {
		return text
	}
	of24, ok := calendar.Of24(text)
	if !ok {
		return text
	}
	if strings.IndexByte(text, '.') == 1 {
		of24 = strings.TrimPrefix(of24, "0")
	}
	return of24
}
