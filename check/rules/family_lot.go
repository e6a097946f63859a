package rules

// lotRules are listed in the order in which they are run.
func lotRules() []Rule {
	return []Rule{
		treatedSeed, treatedUnknown, ergotFound, ergotCheckMissing, mouldFound, mouldCheckMissing,
		lotMoistureUnknown, germinationLow, germinationTestSmall, germinationTestOld,
	}
}
