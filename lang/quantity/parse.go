package quantity

import "strings"

// Parse reads a quantity as it is typed on a command line: "5 lb 4 oz", "8h",
// "62 °F", "3/4", "12.4%", "45 % dry basis". It returns an *Error.
func Parse(text string) (Quantity, error) {
	rest := strings.TrimSpace(text)
	if rest == "" {
		return Quantity{}, &Error{Kind: Missing, Message: "no quantity is given", Hint: "write a number and its unit, such as 8 h"}
	}
	var parts []Part
	for rest != "" {
		var p Part
		p.Number, rest = cutNumber(rest)
		if p.Number == "" {
			word, _, _ := strings.Cut(rest, " ")
			return Quantity{}, numberError(NotANumber, len(parts), word)
		}
		p.Unit, rest = cutUnit(rest)
		if parts = append(parts, p); len(parts) > mostParts {
			break
		}
	}
	return Make(parts...)
}

// cutNumber takes the number, with its fraction, from the front.
func cutNumber(text string) (number, rest string) {
	i := numberEnd(text, 0)
	if j := i + len(text[i:]) - len(strings.TrimLeft(text[i:], " ")); i > 0 && j > i {
		if k := numberEnd(text, j); strings.Contains(text[j:k], "/") && !strings.ContainsAny(text[:i], "/.,") {
			i = k
		}
	}
	return text[:i], strings.TrimLeft(text[i:], " ")
}

func numberEnd(text string, i int) int {
	if strings.HasPrefix(text[i:], "-") {
		i++
	} else if strings.HasPrefix(text[i:], "\u2212") {
		i += len("\u2212")
	}
	start := i
	for i < len(text) && (text[i] >= '0' && text[i] <= '9' || i > start && strings.ContainsRune(".,/", rune(text[i]))) {
		i++
	}
	if i == start {
		return 0
	}
	return i
}

// cutUnit takes the unit from the front: everything up to the next number that
// stands apart, or that follows letters directly as in 1h30min.
func cutUnit(text string) (unit, rest string) {
	end := len(text)
	for i := 1; i < len(text); i++ {
		digit := text[i] >= '0' && text[i] <= '9'
		if digit && (text[i-1] == ' ' || lookup(text[:i]) != nil && lookup(text[:i+1]) == nil) {
			end = i
			break
		}
	}
	if text != "" && text[0] >= '0' && text[0] <= '9' {
		end = 0
	}
	return strings.Join(strings.Fields(text[:end]), " "), text[end:]
}
