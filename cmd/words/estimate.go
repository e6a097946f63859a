package words

import (
	"fmt"
	"math"
	"strings"

	"maltwright/lang/quantity"
)

// Estimate writes a value and its standard error, to the two digits of the error that
// mean something: 1.062 and 0.043.
func Estimate[T ~float64](value, err T) (string, string) {
	n := Places(err)
	return quantity.Fixed(float64(value), n), quantity.Fixed(float64(err), n)
}

// Places is how many digits behind the point show two digits of an error.
func Places[T ~float64](err T) int {
	off := float64(err)
	if !(off > 0) || math.IsInf(off, 0) {
		return 2
	}
	n := 1 - int(math.Floor(math.Log10(off)))
	scale := math.Pow10(n)
	if n > 0 && math.Round(off*scale)/scale >= math.Pow10(2-n) { // 0.0996 is 0.10
		n--
	}
	return max(0, n)
}

// Signed puts a plus before a number that is more than nothing.
func Signed(number string) string {
	if strings.HasPrefix(number, "-") || strings.Trim(number, "0.") == "" {
		return number
	}
	return "+" + number
}

// Many writes how many there are of something: 1 batch, 3 batches.
func Many(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// List joins words as a sentence does: a, b and c.
func List(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}
