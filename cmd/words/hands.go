package words

import "fmt"

// Hands says how many people are there, and whether more is to be done at once than they
// can.
func Hands(n int, short bool) string {
	text := fmt.Sprintf("%d hands", n)
	if n == 1 {
		text = "1 hand"
	}
	if short {
		return "more at once than " + text + " can do"
	}
	return text
}
