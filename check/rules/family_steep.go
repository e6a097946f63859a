package rules

// steepRules are of soaks, rests and the vessel.
func steepRules() []Rule {
	return []Rule{
		vesselTooSmall, grainNotCovered, steepAirLittle, scaleTooSmall, tapWarmerThanSoak, steepWaterWarm, freezingWater, soakTooLong, oxygenGone, waterNeverChanged, airDoesNothing, noAirRest, restBeforeSoak,
		firstSoakLong, restTemperature, castMoistureOutside, targetNotReached, targetOvershot,
	}
}
