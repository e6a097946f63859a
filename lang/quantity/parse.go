package quantity

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// longestText is more bytes than the longest quantity of four parts has.
const longestText = 4 * (longest + longestUnit)

// Parse reads a quantity as it is typed on a command line: "5 lb 4 oz", "8h",
// "1h30min", "62 °F", "3/4", "10½ lb", ".5 l", "12.4%", "45 % dry basis". White space of any kind
// counts as one space. Parse returns the errors of Make.
func Parse(text string) (Quantity, error) {
	if len(text) > longestText {
		return Quantity{}, &Error{Kind: TooLong, Message: fmt.Sprintf("a text of %d characters is longer than any quantity", utf8.RuneCountInString(text)),
			Hint: "write a number and its unit, such as 8 h"}
	}
	rest := strings.Join(strings.Fields(text), " ")
	if rest == "" {
		return Make()
	}
	var parts [mostParts + 1]Part
	n := 0
	for rest != "" && n < len(parts) {
		var number string
		number, rest = cutNumber(rest)
		if number == "" || exponentFollows(rest) {
			word, _, _ := strings.Cut(number+rest, " ")
			return Quantity{}, numberError(NotANumber, n, Part{Number: word})
		}
		parts[n].Number = number
		parts[n].Unit, rest = cutUnit(rest)
		n++
	}
	return Make(parts[:n]...)
}

// cutNumber takes the number, with its fraction, from the front.
func cutNumber(text string) (number, rest string) {
	end := numberEnd(text)
	if end > 0 && end < len(text) && text[end] == ' ' && allDigits(strings.TrimLeft(text[:end], "-\u2212")) {
		fraction := text[end+1:]
		n := numberEnd(fraction)
		if strings.Contains(fraction[:n], "/") || strings.IndexFunc(fraction[:n], IsFraction) == 0 {
			end += 1 + n
		}
	}
	return text[:end], text[end:]
}

// numberEnd is where the number at the front ends: a sign, digits, and whatever
// might stand between digits, so that a wrong number is seen as a whole.
func numberEnd(text string) int {
	rest, _ := cutSign(strings.TrimPrefix(text, "+"))
	start := len(text) - len(rest)
	end := start
	for end < len(text) {
		r, size := utf8.DecodeRuneInString(text[end:])
		if !isDigit(text[end]) && strings.IndexByte(".,/", text[end]) < 0 && !IsFraction(r) {
			break
		}
		end += size
	}
	if strings.Trim(text[start:end], ".,/") == "" {
		return 0
	}
	return end
}

// exponentFollows tells whether what stands behind a number is the rest of 1e5.
func exponentFollows(text string) bool {
	if len(text) < 2 || text[0] != 'e' && text[0] != 'E' {
		return false
	}
	rest, _ := cutSign(strings.TrimPrefix(text[1:], "+"))
	return rest != "" && isDigit(rest[0])
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// cutUnit takes the unit from the front: everything up to the number of the next
// part. The 2 and 3 of m2, m^3 and m3/h belong to the unit, the 3 of 1h30min does
// not.
func cutUnit(text string) (unit, rest string) {
	for i := range len(text) {
		if startsNumber(text, i) && !powerAt(text, i) {
			return strings.TrimSpace(text[:i]), text[i:]
		}
	}
	return strings.TrimSpace(text), ""
}

// startsNumber tells whether a number starts at i. One that begins with its point does
// so only behind a space: the point of w.b. belongs to the unit.
func startsNumber(text string, i int) bool {
	rest, _ := cutSign(text[i:])
	return NumberBegins(rest) && (rest[0] != '.' || i > 0 && text[i-1] == ' ')
}

// ofWater tells whether the digit at i is that of H2O.
func ofWater(text string, i int) bool {
	return strings.HasSuffix(text[:i], "H") && strings.HasPrefix(text[i:], "2O")
}

// powerAt tells whether the digit at i is the power of a unit.
func powerAt(text string, i int) bool {
	if i == 0 || text[i] != '2' && text[i] != '3' || i+1 < len(text) && isDigit(text[i+1]) {
		return false
	}
	return text[i-1] == '^' || ofWater(text, i) || findUnit(strings.TrimSpace(text[:i+1])) != nil
}
