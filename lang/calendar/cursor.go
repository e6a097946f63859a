package calendar

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// cursor moves along a text.
type cursor struct {
	text string
	at   int
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// ahead gives the byte so many places on, 0 behind the end.
func (c *cursor) ahead(n int) byte {
	if c.at+n < len(c.text) {
		return c.text[c.at+n]
	}
	return 0
}

func (c *cursor) peek() byte { return c.ahead(0) }

// digits takes a number of so many digits at the most; one of more is none.
func (c *cursor) digits(most int) (n, wide int) {
	start := c.at
	for isDigit(c.peek()) {
		if wide++; wide > most {
			c.at = start
			return 0, 0
		}
		n = n*10 + int(c.peek()-'0')
		c.at++
	}
	return n, wide
}

// longestWord is above the length of every word of a date or a time.
const longestWord = 16

// letters takes the letters that stand here.
func (c *cursor) letters() string {
	start := c.at
	for c.at < len(c.text) && c.at-start < longestWord {
		r, size := utf8.DecodeRuneInString(c.text[c.at:])
		if !unicode.IsLetter(r) {
			break
		}
		c.at += size
	}
	return c.text[start:c.at]
}

// any takes a sign, if it stands here.
func (c *cursor) any(sign string) bool {
	if strings.HasPrefix(c.text[c.at:], sign) {
		c.at += len(sign)
		return true
	}
	return false
}

func (c *cursor) blanks() {
	for c.at < len(c.text) {
		r, size := utf8.DecodeRuneInString(c.text[c.at:])
		if r != ' ' && r != '\t' && r != '\u00a0' && r != '\u202f' {
			return
		}
		c.at += size
	}
}

// gap takes blanks, or one dash.
func (c *cursor) gap() {
	if !c.any("-") {
		c.blanks()
	}
}

// ends tells whether a date or a time may end here: before no letter and no digit, but for the T
// between a date and its time of day, and not within a time of day.
func (c *cursor) ends() bool {
	if c.peek() == ':' && isDigit(c.ahead(1)) {
		return false
	}
	r, size := utf8.DecodeRuneInString(c.text[c.at:])
	return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '_' || r == 'T' && isDigit(c.ahead(size))
}

// fraction tells whether a number goes on behind its whole part: the .3 of 7.3 kg.
func (c *cursor) fraction() bool {
	return (c.peek() == '.' || c.peek() == ',') && isDigit(c.ahead(1))
}

// dateEnds tells whether a date may end here: letters right behind its figures are the next word.
func (c *cursor) dateEnds() bool {
	r, _ := utf8.DecodeRuneInString(c.text[c.at:])
	return !unicode.IsDigit(r) && r != '_' && (r != ':' || !isDigit(c.ahead(1)))
}
