package quantity

import (
	"math"
	"strconv"
	"strings"
)

// longest is the most characters a number may have.
const longest = 24

// parseNumber reads 12, 12.4, -3, 3/4 or 8 1/3.
func parseNumber(text string) (float64, Kind) {
	if len(text) > longest {
		return 0, TooLong
	}
	negative := false
	if rest, ok := strings.CutPrefix(text, "-"); ok {
		text, negative = rest, true
	} else if rest, ok := strings.CutPrefix(text, "\u2212"); ok {
		text, negative = rest, true
	}
	n, kind := parsePositive(text)
	if negative {
		n = -n
	}
	return n, kind
}

func parsePositive(text string) (float64, Kind) {
	if strings.Contains(text, ",") {
		return 0, DecimalComma
	}
	whole, fraction, mixed := strings.Cut(text, " ")
	if !mixed {
		return parseFraction(text)
	}
	w, ok := digits(whole)
	f, kind := parseFraction(strings.TrimLeft(fraction, " "))
	if !ok || kind != 0 || !strings.Contains(fraction, "/") || f >= 1 {
		return 0, NotANumber
	}
	return w + f, 0
}

func parseFraction(text string) (float64, Kind) {
	top, bottom, ok := strings.Cut(text, "/")
	if !ok {
		return parseDecimal(text)
	}
	t, okTop := digits(top)
	b, okBottom := digits(bottom)
	if !okTop || !okBottom || b == 0 {
		return 0, NotANumber
	}
	return t / b, 0
}

func parseDecimal(text string) (float64, Kind) {
	whole, part, point := strings.Cut(text, ".")
	if !allDigits(whole) || point && !allDigits(part) {
		return 0, NotANumber
	}
	n, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsInf(n, 0) {
		return 0, NotANumber
	}
	return n, 0
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
