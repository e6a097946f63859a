package quantity

import (
	"strings"
	"unicode/utf8"
)

// fractions are those that are typed as one character.
var fractions = map[rune]string{'½': "1/2", '⅓': "1/3", '⅔': "2/3", '¼': "1/4", '¾': "3/4", '⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8"}

// IsFraction tells whether a character is a fraction, as ½ is.
func IsFraction(r rune) bool { return r > utf8.RuneSelf && fractions[r] != "" }

// NumberBegins tells whether a number without a sign stands at the start of a text: 8,
// .5 or ½.
func NumberBegins(text string) bool {
	switch {
	case text == "":
		return false
	case text[0] == '.':
		return len(text) > 1 && isDigit(text[1])
	case text[0] < utf8.RuneSelf:
		return isDigit(text[0])
	}
	r, _ := utf8.DecodeRuneInString(text)
	return IsFraction(r)
}

// Spell writes a number as the language prints it: .5 as 0.5, 10½ as 10 1/2, −3 as -3,
// with one space in front of a fraction. Of what is no number it changes no more.
func Spell(number string) string {
	number = unfold(number)
	if rest, negative := cutSign(number); negative {
		number = "-" + rest
	}
	if whole, fraction, mixed := strings.Cut(number, " "); mixed {
		number = whole + " " + strings.TrimLeft(fraction, " ")
	}
	return number
}

// unfold writes the nought in front of a point, and the figures of a fraction that is
// one character.
func unfold(number string) string {
	rest, _ := cutSign(number)
	sign := number[:len(number)-len(rest)]
	if strings.HasPrefix(rest, ".") && allDigits(rest[1:]) {
		return sign + "0" + rest
	}
	r, size := utf8.DecodeLastRuneInString(rest)
	if !IsFraction(r) {
		return number
	}
	switch whole := strings.TrimRight(rest[:len(rest)-size], " "); {
	case whole == "":
		return sign + fractions[r]
	case allDigits(whole):
		return sign + whole + " " + fractions[r]
	}
	return number
}
