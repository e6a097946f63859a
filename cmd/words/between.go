package words

import "strings"

// Between writes two amounts as the ends of a range, a unit that both have once: 43.2–44.5 %,
// 9 h–1 d 2 h; one alone where they are the same.
func Between(low, high string) string {
	if low == high || low == "" || high == "" {
		return max(low, high)
	}
	number, unit, ok := strings.Cut(low, " ")
	if other, same, _ := strings.Cut(high, " "); ok && unit == same && isNumber(number) && isNumber(other) {
		low = number
	}
	return low + "–" + high
}
