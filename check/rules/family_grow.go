package rules

// growRules are of the growing piece and of withering.
func growRules() []Rule {
	return []Rule{roomTooWarmForBed, roomTooColdForBed, bedTooWarm, bedTooCold, turnGapLong, pieceTooDeep, pieceOverheats, bedDriesOut,
		boxCannot, airCannotHoldBed, boxLineIdle, bedUneven, exhaustStale, airOnTooDry,
		stopByDaysOnly, growthByDryness, growthEndOdd, acrospireGoalOdd, tooShortToModify, tooLongToModify, rubGoalOdd, witherTooWarm}
}
