package rules

// afterRules are of what is done once the malt is out of the kiln.
func afterRules() []Rule { return []Rule{deculmMissing, deculmLate, restShort, storeOpen} }
