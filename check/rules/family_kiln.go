package rules

// kilnRules are of drying and curing.
func kilnRules() []Rule {
	return []Rule{
		equipmentCannot, heatOfAnotherKiln, kilnTooDeep, sunAtNight, hotWhileWet, floorsOutOfStep, floorBelowMissing, gateOrder, gateWaitsLong, cureWithoutGate, cureCoolOrShort, cureTooHotForClaim, claimNotKept, cureBeforeDrying,
		endMoistureHigh, endMoistureVeryLow, originalWeightStop, weightGateIgnoresLoss,
		witheringSlow, stirBeforeBreak, neverStirred, noCooling, rampTooSteep, stewOdd, drumTooFull, quenchOdd,
		roastFire, roastWet, roastWithoutQuench, quenchSteam, smokeClean, smokeSourceNotSaid, smokeLate,
	}
}
