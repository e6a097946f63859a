package calendar

import (
	"fmt"
	"strings"

	"maltwright/lang/vocabulary"
)

const (
	hour    = 3600
	halfDay = 12 * hour
)

// Clock is a time of day as it was written, with every one that it may mean.
type Clock struct {
	Seconds []int // from midnight; none where no clock shows it, two where it may be of the morning or the evening
	Bare    bool  // an hour alone: 7, 7 o'clock, 7 h
	Long    bool  // it may be how long something takes, too: 7 h
}

// ReadClock reads a text that is a time of day and nothing else. It is false for any other.
func ReadClock(text string) (Clock, bool) {
	c := cursor{text: text}
	clock, _, ok := c.clock()
	return clock, ok && c.at == len(text)
}

// LeadingClock gives the length of the time of day that begins a text, 0 where none does.
// What is one wherever it stands has a colon, am or pm, or its word; where a time is
// expected, 7.30, 7h30, 7 h, 0730 and 7 are taken too.
func LeadingClock(text string, expected bool) int {
	c := cursor{text: text}
	if _, sure, ok := c.clock(); !ok || !sure && !expected || LeadingDate(text, false) > c.at { // 2026-03-06 is no 20:26
		return 0
	}
	return c.at
}

// Of24 writes a time of day as a clock of 24 hours shows it, where it can be one only.
func Of24(text string) (of24 string, ok bool) {
	c, ok := ReadClock(text)
	if !ok || len(c.Seconds) != 1 || c.Bare {
		return text, false
	}
	return Shown(c.Seconds[0]), true
}

// Shown writes a time of day, given in seconds from midnight, as a clock of 24 hours shows it.
func Shown(second int) string {
	text := fmt.Sprintf("%02d:%02d", second/hour, second/60%60)
	if second%60 != 0 {
		text += fmt.Sprintf(":%02d", second%60)
	}
	return text
}

// ShownOfTwelve writes a time of day, given in seconds from midnight, as a clock of 12 hours shows it.
func ShownOfTwelve(second int) string {
	h, half := second/hour, "am"
	if h >= 12 {
		half = "pm"
	}
	if h = h % 12; h == 0 {
		h = 12
	}
	if minute := second / 60 % 60; minute > 0 {
		return fmt.Sprintf("%d:%02d %s", h, minute, half)
	}
	return fmt.Sprintf("%d %s", h, half)
}

// halves are what stands behind an hour of twelve; of two that begin alike the longer
// stands first.
var halves = []string{"a.m.", "a.m", "am", "p.m.", "p.m", "pm", vocabulary.Noon, vocabulary.Midnight}

// clock takes the time of day that stands here.
func (c *cursor) clock() (clock Clock, sure, ok bool) {
	if word := c.half(); word == vocabulary.Noon || word == vocabulary.Midnight {
		return Clock{Seconds: []int{map[string]int{vocabulary.Noon: halfDay}[word]}}, true, true
	} else if word != "" {
		return clock, false, false
	}
	h, wide := c.digits(4)
	minute, second, minutes := 0, 0, false
	switch {
	case wide == 0 || wide == 3:
		return clock, false, false
	case wide == 4: // 0730
		h, minute, minutes = h/100, h%100, true
	case c.peek() == ':' && isDigit(c.ahead(1)):
		sure, minutes = true, true
		c.at++
		minute, wide = c.digits(2)
		if c.peek() == ':' && isDigit(c.ahead(1)) {
			c.at++
			second, _ = c.digits(2)
		}
		if wide != 2 {
			minute = -1
		}
	case c.peek() == '.' && isDigit(c.ahead(1)) && isDigit(c.ahead(2)) && !isDigit(c.ahead(3)):
		c.at++
		minute, _ = c.digits(2)
		minutes = true
	}
	of24, twelve := h*hour+minute*60+second, ""
	known := h < 24 && minute >= 0 && minute < 60 && second < 60
	if twelve = c.half(); twelve != "" {
		clock, ok = ofTwelve(h, minute*60+second, twelve)
		if !known {
			clock.Seconds = nil
		}
		return clock, true, ok
	}
	spaced := c.peek() == ' '
	named, said := c.named(minutes)
	if said >= 0 { // 7h30, 14 Uhr 30
		minutes = true
		of24 += said * 60
		known = known && said < 60
	}
	switch {
	case !c.ends() || named == "" && !minutes && c.fraction():
		return clock, false, false
	case known:
		clock.Seconds = []int{of24}
	}
	switch {
	case named == byH && !minutes && spaced:
		clock.Bare, clock.Long = true, true
	case (named == byOClock || named == "") && !minutes:
		clock.Bare = true
		if h > 0 && h <= 12 && known {
			clock.Seconds = []int{h%12*hour + minute*60, h%12*hour + halfDay + minute*60}
		}
	}
	return clock, sure || named == byUhr || named == byOClock, true
}

const (
	byH      = "h"
	byUhr    = "uhr"
	byOClock = "o"
)

// named takes the word behind an hour of 24 that says it is one, and the minutes behind that,
// -1 where none stand there.
func (c *cursor) named(minutes bool) (word string, said int) {
	save := c.at
	c.blanks()
	spaced := c.at > save
	switch word = strings.ToLower(c.letters()); word {
	case byH, byUhr:
	case byOClock:
		if !(c.any("'") || c.any("’")) || !strings.EqualFold(c.letters(), "clock") {
			c.at = save
			return "", -1
		}
		return word, -1
	default:
		c.at = save
		return "", -1
	}
	if minutes {
		return word, -1
	}
	end := c.at
	if spaced || word == byUhr {
		c.blanks()
	}
	said, wide := c.digits(2)
	if wide != 2 || !c.ends() {
		c.at, said = end, -1
	}
	return word, said
}

// half takes the am or pm that stands here, without its points and in small letters.
func (c *cursor) half() string {
	save := c.at
	c.blanks()
	for _, h := range halves {
		if rest := c.text[c.at:]; len(rest) >= len(h) && strings.EqualFold(rest[:len(h)], h) {
			c.at += len(h)
			if isDigit(c.peek()) || c.ends() && (c.peek() != '-' || isDigit(c.ahead(1))) && c.peek() != '\'' {
				return strings.ReplaceAll(h, ".", "")
			}
			c.at -= len(h)
		}
	}
	c.at = save
	return ""
}

// ofTwelve is a time of day of a clock of twelve hours. It is of no clock where its hour is
// not one of twelve, or no noon.
func ofTwelve(h, rest int, half string) (Clock, bool) {
	named := half == vocabulary.Noon || half == vocabulary.Midnight
	if h < 1 || h > 12 || named && (h != 12 || rest != 0) {
		return Clock{}, true
	}
	at := h%12*hour + rest
	if half == "pm" || half == vocabulary.Noon {
		at += halfDay
	}
	return Clock{Seconds: []int{at}}, true
}
