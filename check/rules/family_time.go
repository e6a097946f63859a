package rules

// timeRules are of how long steps last and when their tests hold. They come behind the
// others, and are quiet where one of those speaks of the same words.
func timeRules() []Rule {
	return []Rule{testHoldsAlready, earliestTooLate, holdNotReached, stepTimeOdd}
}
