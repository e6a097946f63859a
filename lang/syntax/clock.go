package syntax

import (
	"slices"
	"strings"
	"unicode/utf8"

	"maltwright/lang/calendar"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// halves are what stands behind an hour of twelve, in capitals too; of two that begin
// alike the longer stands first.
var halves = []string{"a.m.", "a.m", "am", "p.m.", "p.m", "pm", vocabulary.Noon, vocabulary.Midnight}

// clock takes the time of day whose first digits were just read, if they are of one:
// 7:30, 07:30:15, 7:30 pm, 7 pm, 7.30 pm; and the 7 of 7 to 10 pm, so that it can be told
// what is missing of it.
func (s *scanner) clock(first int) bool {
	if clockStarts(s.text[first:]) {
		for s.peek(0) == ':' && isDigit(s.peek(1)) {
			s.at++
			s.digits()
		}
		if !s.half() {
			s.at = max(s.at, first+calendar.LeadingClock(s.text[first:], true)) // 14:30 Uhr
			s.zone()
		}
		s.dateBehind()
		return true
	}
	if s.at-first < 1 || s.at-first > 2 {
		return s.at-first == 4 && s.hour(first)
	}
	save := s.at
	if s.peek(0) == '.' && isDigit(s.peek(1)) && isDigit(s.peek(2)) && !isDigit(s.peek(3)) {
		s.at += len(".30")
	}
	if s.half() || s.hourBehind() || s.hourBefore() {
		s.dateBehind()
		return true
	}
	s.at = save
	return s.hour(first)
}

// half takes the am or pm that stands here.
func (s *scanner) half() bool {
	save := s.at
	s.skipBlanks()
	for _, h := range halves {
		rest := s.text[s.at:]
		if len(rest) < len(h) || !strings.EqualFold(rest[:len(h)], h) {
			continue
		}
		behind := rest[len(h):]
		r, _ := utf8.DecodeRuneInString(behind)
		if number := r == '-' && quantity.NumberBegins(behind[1:]) || r >= '0' && r <= '9'; number || !isLetter(r) && (r >= utf8.RuneSelf || !wordByte[r]) { // 7am-10pm
			s.at += len(h)
			return true
		}
	}
	s.at = save
	return false
}

// hourBehind tells whether the number just read, which has no unit, ends a range that
// begins with an hour of twelve: 7 am to 10.
func (s *scanner) hourBehind() bool {
	if s.last != kindTo || !s.twelve {
		return false
	}
	save := s.at
	s.skipBlanks()
	unit := s.at < len(s.text) && s.unitStarts()
	s.at = save
	return !unit
}

// hourBefore tells whether a range that ends with an hour of twelve goes on behind the
// number just read: 7 to 10 pm.
func (s *scanner) hourBefore() bool {
	save := s.at
	defer func() { s.at = save }()
	s.skipBlanks()
	r, size := utf8.DecodeRuneInString(s.text[s.at:])
	switch {
	case r == '-' || r == '–' || r == '—':
		s.at += size
	case s.takeLetters() != vocabulary.To:
		return false
	}
	s.skipBlanks()
	hour := s.at
	s.digits()
	if n := s.at - hour; n < 1 || n > 2 {
		return false
	}
	if c := s.peek(0); (c == ':' || c == '.') && isDigit(s.peek(1)) {
		s.at++
		s.digits()
	}
	return s.half()
}

// ofTwelve tells whether a time of day says which half of the day it is of.
func ofTwelve(clock string) bool {
	return slices.ContainsFunc(halves, func(h string) bool {
		return len(clock) >= len(h) && strings.EqualFold(clock[len(clock)-len(h):], h)
	})
}

// bareHour tells whether a time of day is an hour alone, which says neither its minutes nor
// which half of the day it is of.
func bareHour(token string) bool {
	c, ok := calendar.ReadClock(plainClock(token))
	return ok && c.Bare
}

// namedTime tells whether a word is a time of day: noon. At the beginning of a statement
// it is none.
func (s *scanner) namedTime(word string) bool {
	switch s.last {
	case 0, kindEnd, kindOpen, kindClose, kindComment:
		return false
	}
	return word == vocabulary.Noon || word == vocabulary.Midnight
}

// numberStarts tells whether a number without a sign stands here. One that begins with
// its point does so only where no word and no number ends.
func (s *scanner) numberStarts() bool {
	if !quantity.NumberBegins(s.text[s.at:]) {
		return false
	}
	before, _ := utf8.DecodeLastRuneInString(s.text[:s.at])
	glued := before == '.' || isLetter(before) || quantity.NumberBegins(string(before))
	return s.text[s.at] != '.' || s.at == 0 || !glued
}
