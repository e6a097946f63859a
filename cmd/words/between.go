package words

import (
	"slices"
	"strings"
)

// Between writes two amounts as the ends of a range, what both have alike once: 43.2–44.5 %, 7 d 8–19 h,
// 9 h–1 d 2 h; one alone where they are the same.
func Between(low, high string) string {
	if low == high || low == "" || high == "" {
		return max(low, high)
	}
	from, to := strings.Fields(low), strings.Fields(high)
	at := len(from) - 2 // of the last number, in front of its unit
	if len(from) != len(to) || at < 0 || !isNumber(from[at]) || !isNumber(to[at]) || from[at+1] != to[at+1] || !slices.Equal(from[:at], to[:at]) {
		return low + "–" + high
	}
	from[at] += "–" + to[at]
	return strings.Join(from, " ")
}
