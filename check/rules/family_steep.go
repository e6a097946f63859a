package rules

// steepRules are of soaks, rests and the vessel.
func steepRules() []Rule { return []Rule{vesselTooSmall, oxygenGone, targetMissed} }
