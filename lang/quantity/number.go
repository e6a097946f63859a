package quantity

import (
	"strconv"
	"strings"
)

const (
	longest = 24   // the most characters a number may have
	largest = 1e12 // the most a number may be: a tonne in micrograms
)

// parseNumber reads 12, 12.4, -3, 3/4, 8 1/3, .5 or 8½. It gives the kind of error, or
// NoError.
func parseNumber(text string) (float64, Kind) {
	if n, ok := plainDecimal(text); ok {
		return n, NoError
	}
	if text = unfold(text); len(text) > longest {
		return 0, TooLong
	}
	if strings.Contains(text, ",") {
		return 0, DecimalComma
	}
	rest, negative := cutSign(text)
	n, ok := parsePositive(rest)
	switch {
	case !ok:
		return 0, NotANumber
	case n > largest:
		return 0, TooLarge
	case negative && n != 0:
		return -n, NoError
	}
	return n, NoError
}

// plainDecimal reads the common case, 12 or 12.4, without a detour: up to 15
// digits are exact in a float64, and so is the power of ten they are divided by,
// hence the quotient is rounded once, as by strconv.
func plainDecimal(text string) (n float64, ok bool) {
	if len(text) == 0 || len(text) > 13 {
		return 0, false
	}
	mantissa, point := 0, -1
	for i := range len(text) {
		switch c := text[i]; {
		case c >= '0' && c <= '9':
			mantissa = mantissa*10 + int(c-'0')
		case c == '.' && point < 0 && i > 0:
			point = i
		default:
			return 0, false
		}
		if mantissa > 1e8 { // keeps to 32 bits too; longer numbers take the other way
			return 0, false
		}
	}
	switch {
	case point < 0:
		return float64(mantissa), true
	case point == len(text)-1:
		return 0, false
	}
	return float64(mantissa) / tens[len(text)-1-point], true
}

var tens = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12}

// cutSign takes a minus sign from the front: the hyphen or the true sign.
func cutSign(text string) (rest string, negative bool) {
	if rest, ok := strings.CutPrefix(text, "-"); ok {
		return rest, true
	}
	return strings.CutPrefix(text, "\u2212")
}

func parsePositive(text string) (float64, bool) {
	whole, rest, mixed := strings.Cut(text, " ")
	if !mixed {
		if strings.Contains(text, "/") {
			return parseFraction(text)
		}
		return parseDecimal(text)
	}
	w, ok := digits(whole)
	f, okFraction := parseFraction(strings.TrimLeft(rest, " "))
	return w + f, ok && okFraction && f < 1
}

func parseFraction(text string) (float64, bool) {
	top, bottom, ok := strings.Cut(text, "/")
	t, okTop := digits(top)
	b, okBottom := digits(bottom)
	if !ok || !okTop || !okBottom || b == 0 {
		return 0, false
	}
	return t / b, true
}

func parseDecimal(text string) (float64, bool) {
	whole, behind, point := strings.Cut(text, ".")
	if !allDigits(whole) || point && !allDigits(behind) {
		return 0, false
	}
	n, err := strconv.ParseFloat(text, 64)
	return n, err == nil
}

func digits(text string) (float64, bool) {
	if !allDigits(text) {
		return 0, false
	}
	n, err := strconv.ParseFloat(text, 64)
	return n, err == nil
}

func allDigits(text string) bool {
	for i := range len(text) {
		if text[i] < '0' || text[i] > '9' {
			return false
		}
	}
	return text != ""
}

// decimalsOf is the number of digits behind the point, as written.
func decimalsOf(number string) int {
	if i := strings.IndexByte(number, '.'); i >= 0 {
		return len(number) - i - 1
	}
	return 0
}
